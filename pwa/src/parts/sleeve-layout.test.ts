// @vitest-environment node
import { describe, expect, test } from "vitest";

import { plateColour, plateDiameter } from "./plates";
import { layOut, WIDTH } from "./sleeve-layout";

const THICKNESS = new Map([
  [20, 0.06],
  [10, 0.035],
  [1.25, 0.015],
]);

function laidOut(side: readonly number[], height = 180) {
  return layOut({ side, labels: side.map(String), lengthM: 0.415, thickness: THICKNESS, height });
}

describe("the drawing of a sleeve", () => {
  test("is to scale: thickness and diameter by the same measure", () => {
    const { plates, scale, axis } = laidOut([20, 10]);
    const [thick] = plates;
    expect(thick?.width).toBeCloseTo(60 * scale);
    expect(axis - (thick?.top ?? 0)).toBeCloseTo(225 * scale);
  });

  test("puts the innermost plate at the ring and each next one against it", () => {
    const { plates, sleeveX, stackEnd } = laidOut([20, 10, 1.25]);
    expect(plates[0]?.x).toBe(sleeveX);
    expect(plates[1]?.x).toBeCloseTo((plates[0]?.x ?? 0) + (plates[0]?.width ?? 0));
    expect(stackEnd).toBeCloseTo((plates[2]?.x ?? 0) + (plates[2]?.width ?? 0));
  });

  test.each([
    [[1.25, 1.25, 1.25, 1.25, 1.25]],
    [[20, 20, 20, 20, 10, 10, 1.25, 1.25]],
    [Array.from({ length: 12 }, () => 1.25)],
  ])("keeps the numbers of %o in order, apart and inside", (side) => {
    const { plates, labelSize } = laidOut(side);
    const edges = plates.map(({ labelX, label }) => {
      const half = (label.length * labelSize * 0.58) / 2;
      return [labelX - half, labelX + half] as const;
    });
    for (const [index, [left, right]] of edges.entries()) {
      expect(left).toBeGreaterThanOrEqual(index === 0 ? -0.01 : (edges[index - 1]?.[1] ?? 0));
      expect(right).toBeLessThanOrEqual(WIDTH + 0.01);
    }
  });

  test("stays inside at any height", () => {
    for (const height of [110, 180, 230]) {
      const { plates, sleeveEnd } = laidOut([20, 10], height);
      expect(Math.min(...plates.map(({ top }) => top))).toBeGreaterThan(20);
      expect(sleeveEnd).toBeLessThanOrEqual(WIDTH);
    }
  });

  test("draws a plate that the kit does not know with a usual thickness", () => {
    expect(laidOut([2.5]).plates[0]?.width).toBeGreaterThan(5);
  });
});

describe("the colours of the federation's rules (from memory)", () => {
  test.each([
    [25, "red"],
    [20, "blue"],
    [15, "yellow"],
    [10, "green"],
    [5, "white"],
    [2.5, "red"],
    [2, "blue"],
    [1.5, "yellow"],
    [1, "green"],
    [0.5, "white"],
    [1.25, "steel"],
    [7.5, "steel"],
  ])("%d kg is %s", (kg, colour) => {
    expect(plateColour(kg)).toBe(colour);
  });

  test("large discs have one diameter, small ones less with their mass", () => {
    expect([25, 20, 15, 10].map(plateDiameter)).toStrictEqual([450, 450, 450, 450]);
    const small = [7.5, 5, 2.5, 2, 1.25, 0.5].map(plateDiameter);
    expect(small.toSorted((one, other) => other - one)).toStrictEqual(small);
  });
});
