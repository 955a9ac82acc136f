import { describe, expect, it } from "vitest";

import type { OcclusionResult } from "../answers";
import { askedInWords, expectedIn, minutes, wearPlanned, wornInWords } from "./occlusion-words";

const CURLS: OcclusionResult = {
  limb: "upper arm",
  restriction: "wrap",
  both_at_once: false,
  tightness: 5,
  pressure_percent: null,
  wear_s: 210,
  limit_s: 900,
  // Rolnick et al. 2025, seen.
  expected: [36.0, 14.7, 11.5, 10.4],
  next: null,
  asks: [],
};

describe("what was asked of an exercise with a wrap on", () => {
  it("is told by limb, tightness and sides", () => {
    expect(askedInWords(CURLS)).toBe(
      "Wrap on the upper arm, tightness 5 of 10, one side after the other",
    );
  });

  it("with a cuff is told by its share of occlusion, never by a tightness", () => {
    const cuff: OcclusionResult = {
      ...CURLS,
      restriction: "cuff",
      tightness: null,
      pressure_percent: 50,
      both_at_once: true,
    };
    expect(askedInWords(cuff)).toBe("Cuff on the upper arm, 50 % of occlusion, both sides at once");
  });

  it("says how long it will take, and when it has to be off", () => {
    expect(wearPlanned(CURLS)).toBe("about 3:30 min on, off by 15:00 min");
    expect(wearPlanned({ ...CURLS, limit_s: null })).toBe("");
  });

  it("has beside each set what such sets to failure usually bring", () => {
    expect(expectedIn(CURLS, 2, 2)).toBe("15");
    expect(expectedIn(CURLS, 1, 3)).toBe("36, 15, 12");
    expect(expectedIn(CURLS, 5, 5)).toBe("");
  });
});

describe("wear", () => {
  it("is told in minutes and seconds", () => {
    expect(minutes(245)).toBe("4:05 min");
    expect(minutes(59.6)).toBe("1:00 min");
  });

  it("of several times on one limb is told for each and in all", () => {
    expect(wornInWords({ seconds: [240] })).toBe("4:00 min");
    expect(wornInWords({ seconds: [240, 310] })).toBe("4:00 min and 5:10 min, 9:10 min in all");
  });
});
