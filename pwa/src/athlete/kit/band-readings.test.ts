import { describe, expect, test } from "vitest";

import { doubtOf, mostCm, withReading, worthOf } from "./band-readings";

const UP = [
  { cm: 125, tenths: 53 },
  { cm: 150, tenths: 85 },
];

describe("readings of a band", () => {
  test("go no further than two and a half times its rest length", () => {
    expect(mostCm(104)).toBe(260);
    expect(mostCm(105)).toBe(262);
  });

  test("stand shortest first, and a second one at a length takes the place of the first", () => {
    expect(withReading(UP, { cm: 100, tenths: 10 }).map(({ cm }) => cm)).toStrictEqual([
      100, 125, 150,
    ]);
    expect(withReading(UP, { cm: 150, tenths: 90 })).toStrictEqual([
      UP[0],
      { cm: 150, tenths: 90 },
    ]);
  });

  test("are doubted where a longer band pulls no more, and where it pulls with nothing", () => {
    expect(doubtOf(UP)).toBeNull();
    expect(doubtOf([...UP, { cm: 175, tenths: 80 }])).toContain("At 175 cm it pulls no more");
    expect(doubtOf([{ cm: 125, tenths: 0 }])).toContain("Take that reading again");
  });

  test("say what they are worth", () => {
    expect(worthOf(1)).toContain("Two readings at least");
    expect(worthOf(2)).toContain("5 %");
    expect(worthOf(4)).toBe("As good as the scale.");
  });
});
