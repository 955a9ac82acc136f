import { describe, expect, it } from "vitest";

import { figureInWords } from "./figures";

describe("a figure of a result", () => {
  it.each([
    [101.25, "kg", "101.25 kg"],
    [4.297, "kg", "4.3 kg"],
    [-0.5, "kg", "−0.5 kg"],
    [136.512, "N", "137 N"],
    [83.1175, "mmHg", "83.1 mmHg"],
    [1.0388, "", "1.04"],
    [6, "", "6"],
  ])("of %d %s is read as %s", (value, unit, words) => {
    expect(figureInWords({ name: "", value, unit })).toBe(words);
  });
});
