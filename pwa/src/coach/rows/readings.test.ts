import { describe, expect, it } from "vitest";

import { readReadings, writeReadings } from "./readings";

describe("readings of a hanging scale", () => {
  it("marked in kilograms are kept in newtons, at standard gravity (9.80665 m/s², CGPM 1901)", () => {
    expect(readReadings("1.30 m 10 kg")).toEqual([{ length_m: 1.3, force_n: 98.1 }]);
  });

  it("may be in newtons, and with a comma for the point", () => {
    expect(readReadings("1,3 m: 98,1 N; 1.6 m 140 n")).toEqual([
      { length_m: 1.3, force_n: 98.1 },
      { length_m: 1.6, force_n: 140 },
    ]);
  });

  it("come back as they were written", () => {
    const text = "1.25 m 5.3 kg; 1.5 m 8.46 kg";
    expect(writeReadings(readReadings(text) ?? [])).toBe(text);
  });

  it("without a unit are not guessed at", () => {
    expect(readReadings("1.3 m 10")).toBeNull();
    expect(readReadings("long 10 kg")).toBeNull();
  });

  it("are none where nothing is written", () => {
    expect(readReadings(" ; ")).toEqual([]);
  });
});
