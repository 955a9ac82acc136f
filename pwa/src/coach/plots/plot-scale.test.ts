import { describe, expect, it } from "vitest";

import { scale, ticks, timeTicks } from "./plot-scale";

describe("the ticks of an axis", () => {
  it.each([
    [101.4, 112.8, [100, 102.5, 105, 107.5, 110, 112.5, 115]],
    [61.7, 67.6, [60, 62, 64, 66, 68]],
    [0, 1, [0, 0.2, 0.4, 0.6, 0.8, 1]],
  ])("are round and hold %d to %d between them", (low, high, expected) => {
    expect(ticks(low, high, 6)).toEqual(expected);
  });

  it("are two at least where all values are the same", () => {
    const found = ticks(100, 100, 6);
    expect(found.length).toBeGreaterThanOrEqual(2);
    expect(found[0]).toBeLessThanOrEqual(100);
  });

  it("of time are whole days apart", () => {
    const from = Date.parse("2026-02-02");
    const to = Date.parse("2026-03-02");
    const days = timeTicks(from, to, 5).map((at) => (at - from) / 86_400_000);
    expect(days).toEqual([0, 7, 14, 21, 28]);
  });
});

describe("a scale", () => {
  it("puts the ends of the values on the ends of the drawing", () => {
    const y = scale([100, 110], [200, 0]);
    expect([y(100), y(105), y(110)]).toEqual([200, 100, 0]);
  });

  it("puts a single value in the middle", () => {
    expect(scale([5, 5], [0, 100])(5)).toBe(50);
  });
});
