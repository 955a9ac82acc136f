import { describe, expect, it } from "vitest";

import { readNumber, readNumbers, writeNumber } from "./numbers";

describe("a typed number", () => {
  it.each([
    ["62.5", 62.5],
    ["62,5", 62.5],
    [" 5 ", 5],
    ["-2.5", -2.5],
    ["−2,5", -2.5],
    ["5.", 5],
    [".5", 0.5],
  ])("%s is read", (text, value) => {
    expect(readNumber(text)).toEqual({ kind: "number", value });
  });

  it.each(["5x", "1e3", "0x10", "1.2.3", "Infinity", "1,000.5"])("%s is not guessed at", (text) => {
    expect(readNumber(text)).toEqual({ kind: "wrong" });
  });

  it("is nothing where nothing is typed", () => {
    expect(readNumber("  ")).toEqual({ kind: "empty" });
  });

  it("is written without the dust of binary fractions", () => {
    expect(writeNumber(0.1 + 0.2)).toBe("0.3");
    expect(writeNumber(undefined)).toBe("");
  });
});

describe("a list of numbers", () => {
  it.each([
    ["5, 10, 15", [5, 10, 15]],
    ["5 10 15", [5, 10, 15]],
    ["2,5; 5; 7,5", [2.5, 5, 7.5]],
    ["", []],
  ])("%s is read", (text, numbers) => {
    expect(readNumbers(text)).toEqual(numbers);
  });

  it("is not read where a comma could mean either", () => {
    expect(readNumbers("5,10,15")).toBeNull();
  });
});
