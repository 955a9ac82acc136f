// @vitest-environment node
import { describe, expect, test } from "vitest";

import { handling, loadOf, stepLoad } from "./stacks";

describe("from one sleeve stack to another", () => {
  test("what differs comes off from the outside and goes on in order", () => {
    expect(handling([20, 5, 2.5], [20, 10, 1.25])).toStrictEqual({ off: [2.5, 5], on: [10, 1.25] });
  });

  test("a plate further in can only be reached by taking off what is outside of it", () => {
    expect(handling([5, 20], [20])).toStrictEqual({ off: [20, 5], on: [20] });
  });

  test("the same stack asks for nothing", () => {
    expect(handling([20, 5], [20, 5])).toStrictEqual({ off: [], on: [] });
  });
});

const LOADS = [
  { kg: 35.5, position: 3570, side: [2.5, 5] },
  { kg: 35.5, position: 3570, side: [5, 2.5] },
  { kg: 48, position: 3871, side: [10, 2.5, 1.25] },
];

describe("a load that can be hung in several ways", () => {
  test("is hung with the fewest plates moved", () => {
    expect(loadOf(LOADS, 35.5, [5])).toBe(1);
    expect(loadOf(LOADS, 35.5, [2.5])).toBe(0);
  });

  test("is hung as preferred where the ways are as good", () => {
    expect(loadOf(LOADS, 35.5, [], 1)).toBe(1);
    expect(loadOf(LOADS, 35.5, [2.5], 1)).toBe(0);
  });

  test("is not there where the kit cannot make it", () => {
    expect(loadOf(LOADS, 36)).toBeNull();
  });
});

describe("a step from load to load", () => {
  test("goes to the next different load and stays at the ends", () => {
    expect(stepLoad(LOADS, 35.5, 1)).toBe(48);
    expect(stepLoad(LOADS, 48, -1)).toBe(35.5);
    expect(stepLoad(LOADS, 48, 1)).toBe(48);
  });

  test("has nowhere to go without loads", () => {
    expect(stepLoad([], 50, 1)).toBeNull();
  });
});
