import { describe, expect, it } from "vitest";

import { bands, named, stacked } from "./bars";

describe("the places of bars", () => {
  it("are even, each in the middle of its share", () => {
    const places = bands(4, [100, 500]);
    expect(places.map((band) => band.middle)).toEqual([150, 250, 350, 450]);
    expect(places[0]?.start).toBe(150 - (places[0]?.width ?? 0) / 2);
  });

  it("leave room between them, and one bar alone is no wall", () => {
    const many = bands(52, [0, 312]);
    expect(many.every((band) => band.width < band.step)).toBe(true);
    expect(bands(1, [0, 900])[0]?.width).toBeLessThan(50);
  });
});

describe("the names under bars", () => {
  it("are all there where there is room", () => {
    expect(named(3, 300, 50)).toEqual([0, 1, 2]);
  });

  it("are evenly apart and end with the newest where there is not", () => {
    expect(named(12, 300, 52)).toEqual([2, 5, 8, 11]);
    expect(named(52, 330, 52)).toHaveLength(6);
    expect(named(52, 330, 52).at(-1)).toBe(51);
  });
});

it("parts of a stack stand on each other", () => {
  expect(stacked([10, 0, 5])).toEqual([
    [0, 10],
    [10, 10],
    [10, 15],
  ]);
});
