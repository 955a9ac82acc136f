import { render } from "preact";
import { describe, expect, test } from "vitest";

import { CURVE_HEIGHT, curveLine, forceAt } from "./curve-line";
import { type Curve, curveInWords } from "./curve-words";
import { ForceCurve } from "./force-curve";

const KG = { figure: (kg: number) => String(Math.round(kg * 10) / 10), unit: "kg" };

// A hex bar of 85 kg with a band on each side over two pegs, as this project's server works it out.
const BANDS: Curve = {
  start_kg: 88.55,
  mean_kg: 101.77,
  end_kg: 115.94,
  doubt_kg: 0.23,
  points_kg: [88.55, 90.6, 93.09, 95.8, 98.67, 101.61, 104.56, 107.51, 110.43, 113.23, 115.94],
};

describe("the numbers of a force curve", () => {
  test("are those at the bottom, on average and at the top, with their doubt in words", () => {
    const { caption, figures } = curveInWords(BANDS, { kind: "hex-bar" }, KG);
    expect(caption).toBe("In all, in kg, give or take 0.2");
    expect(figures).toStrictEqual([
      { label: "bottom", figure: "88.6" },
      { label: "average", figure: "101.8" },
      { label: "top", figure: "115.9" },
    ]);
  });

  test("are told for who cannot see the line", () => {
    const { picture } = curveInWords(BANDS, { kind: "hex-bar" }, KG);
    expect(picture).toBe("Force curve from bottom to top: 88.6, 94.4, 101.6, 109, 115.9 kg");
  });

  test("are those in the hand at a landmine and at the handle of a stack", () => {
    expect(curveInWords(BANDS, { kind: "landmine" }, KG).caption).toContain("In the hand");
    const stack = curveInWords(BANDS, { kind: "stack" }, KG);
    expect(stack.caption).toContain("At the handle");
    expect(stack.figures.map(({ label }) => label)).toStrictEqual(["start", "average", "end"]);
  });

  test("say no doubt that would read as nothing", () => {
    const sure = { ...BANDS, doubt_kg: 0.04 };
    expect(curveInWords(sure, { kind: "hex-bar" }, KG).caption).toBe("In all, in kg");
  });

  test.each([
    [0, ["held here 88.6", "end 115.9"]],
    [0.5, ["start 88.6", "held here 101.6", "end 115.9"]],
    [1, ["start 88.6", "held here 115.9"]],
  ])("name the place of a hold at %d of the lift", (heldAt, told) => {
    const { figures } = curveInWords(BANDS, { kind: "stack", heldAt }, KG);
    expect(figures.map(({ label, figure }) => `${label} ${figure}`)).toStrictEqual(told);
  });
});

describe("the line of a force curve", () => {
  test("rises to the right where the lift gets heavier, and stays inside the drawing", () => {
    const { y } = curveLine(BANDS.points_kg ?? []);
    expect(y(BANDS.end_kg)).toBeLessThan(y(BANDS.start_kg));
    expect(y(BANDS.end_kg)).toBeGreaterThan(0);
    expect(y(BANDS.start_kg)).toBeLessThan(CURVE_HEIGHT);
  });

  test("stays flat where little changes: a twentieth looks like less than a quarter does", () => {
    const rise = (from: number, to: number) => {
      const { y } = curveLine([from, to]);
      return y(from) - y(to);
    };
    expect(rise(95, 100)).toBeCloseTo(rise(75, 100) / 5, 0);
    expect(rise(100, 100)).toBe(0);
  });

  test("has a value between its points, and at the ends the points themselves", () => {
    expect([0, 0.25, 0.75, 1].map((at) => forceAt([10, 20, 40], at))).toStrictEqual([
      10, 15, 30, 40,
    ]);
  });
});

test("a sheet that tells only the ends is drawn as a straight line between them", () => {
  const root = document.createElement("div");
  const curve = { start_kg: 40, mean_kg: 45, end_kg: 50 };
  render(<ForceCurve curve={curve} lift={{ kind: "straight-bar" }} reading={KG} />, root);
  expect(root.querySelector(".curve-line")?.getAttribute("d")).toMatch(/^M[\d.]+ [\d.]+L[^L]+$/);
  expect(root.querySelector("[role=img]")?.getAttribute("aria-label")).toContain("40, 42.5, 45");
});
