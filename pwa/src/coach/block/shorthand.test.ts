import { describe, expect, it } from "vitest";

import { readShorthand } from "./shorthand";
import { lineInWords, restInWords, wishInWords } from "./wish-words";

const USUAL = { basis: "rir", rir: 3 } as const;

function read(text: string) {
  const found = readShorthand(text, USUAL);
  if ("what" in found) throw new Error(found.what);
  return found;
}

describe("shorthand", () => {
  it.each([
    ["8x3 60%", 8, { reps: 3, load: { basis: "percent", percent: 60 } }],
    ["8 x 3 @60%", 8, { reps: 3, load: { basis: "percent", percent: 60 } }],
    ["8×3 at 62,5 %", 8, { reps: 3, load: { basis: "percent", percent: 62.5 } }],
    ["3x5 100kg", 3, { reps: 5, load: { basis: "kg", kg: 100 } }],
    ["4x8 2rir", 4, { reps: 8, load: { basis: "rir", rir: 2 } }],
    ["4x8 RIR 2", 4, { reps: 8, load: { basis: "rir", rir: 2 } }],
    ["2x6 top 85%", 2, { reps: 6, load: { basis: "top-set", percent: 85 } }],
    ["3x5 last +2.5", 3, { reps: 5, load: { basis: "last", add_kg: 2.5 } }],
    ["3x5 last", 3, { reps: 5, load: { basis: "last" } }],
    ["3x8 body + 10 kg", 3, { reps: 8, load: { basis: "body", add_kg: 10 } }],
    ["3x8 body −20", 3, { reps: 8, load: { basis: "body", add_kg: -20 } }],
    ["3x30s no load", 3, { seconds: 30, load: { basis: "none" } }],
    ["4x40m 60kg", 4, { distance_m: 40, load: { basis: "kg", kg: 60 } }],
    ["4x2+2+2 80%", 4, { blocks: [2, 2, 2], load: { basis: "percent", percent: 80 } }],
    [
      "1x30 30% to failure",
      1,
      { reps: 30, to_failure: true, load: { basis: "percent", percent: 30 } },
    ],
  ])("reads %s", (text, count, asks) => {
    expect(read(text)).toMatchObject({ count, asks });
  });

  it("takes the usual load where the line names none", () => {
    expect(read("3x8").asks.load).toEqual(USUAL);
  });

  it.each([
    ["8x3 60% rest 75-90", { from_s: 75, to_s: 90 }],
    ["8x3 rest 75 to 90 60%", { from_s: 75, to_s: 90 }],
    ["5x3 80% rest 2:30-3:30", { from_s: 150, to_s: 210 }],
    ["5x3 80% rest 120s", { from_s: 120, to_s: 120 }],
  ])("reads the rest of %s", (text, rest) => {
    expect(read(text).rest).toEqual(rest);
  });

  it.each([
    ["", /begin with sets/i],
    ["bench 3x5", /begin with sets/i],
    ["3x5 heavy", /“heavy” is not understood/],
    ["40x3 60%", /1 to 30/],
    ["0x3", /1 to 30/],
    ["3x5 60% 100kg", /“100kg” is not understood/],
  ])("says what is not understood in “%s”", (text, what) => {
    const found = readShorthand(text, USUAL);
    expect("what" in found && found.what).toMatch(what);
  });
});

describe("reading back", () => {
  it("says a line as a coach would say it", () => {
    const { count, asks, rest } = read("8x3 60% rest 75-90");
    expect(lineInWords(count, asks)).toBe("8 sets of 3 at 60 % of the maximum");
    expect(rest && restInWords(rest)).toBe("rest 75–90 s");
    expect(lineInWords(1, read("1x30 30% to failure").asks)).toBe(
      "1 set of 30, on to failure at 30 % of the maximum",
    );
  });

  it.each([
    [{ basis: "kg", kg: 20, in_hand: true } as const, "with 20 kg in the hand"],
    [{ basis: "last", add_kg: -2.5 } as const, "as last time −2.5 kg"],
    [{ basis: "body", add_kg: 10 } as const, "own body +10 kg"],
    [{ basis: "none" } as const, "without load"],
  ])("has words for each kind of load", (wish, words) => {
    expect(wishInWords(wish)).toBe(words);
  });
});
