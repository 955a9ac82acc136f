import { describe, expect, it } from "vitest";

import type { CalculatorInput } from "../answers";
import {
  askedFor,
  chosen,
  faultsOf,
  labelInWords,
  lacking,
  limitsInWords,
  otherFaults,
  toSend,
} from "./inputs";

function input(name: string, part: Partial<CalculatorInput> = {}): CalculatorInput {
  const limits = { unit: "", least: null, most: null, above: false } as const;
  const rest = { about: "", needed: true, default: null, choices: [], choice_names: [] } as const;
  return { name, kind: "number", label: name, ...limits, ...rest, of: [], when: null, ...part };
}

const BASIS = input("basis", { kind: "choice", choices: ["equation", "measured"] });
const THIGH = input("thigh_cm", { needed: false, when: { name: "basis", one_of: ["equation"] } });
const BY = input("measured_by", { needed: false, when: { name: "basis", one_of: ["measured"] } });
const CUFF = [BASIS, THIGH, BY];

function names(inputs: readonly CalculatorInput[]): string {
  return inputs.map(({ name }) => name).join(" ");
}

describe("the inputs of a calculator", () => {
  it("are asked for as a choice says, and then needed", () => {
    expect(names(askedFor(CUFF, {}))).toBe("basis");
    expect(names(askedFor(CUFF, { basis: "equation" }))).toBe("basis thigh_cm");
    expect(lacking(CUFF, { basis: "measured" })).toEqual(["measured_by"]);
    expect(lacking(CUFF, { basis: "measured", measured_by: "a nurse" })).toEqual([]);
  });

  it("follow the usual choice where none was made", () => {
    const usual = { ...BASIS, default: "equation" };
    expect(names(askedFor([usual, THIGH], {}))).toBe("basis thigh_cm");
    expect(chosen(usual, undefined)).toBe("equation");
    expect(chosen(BASIS, undefined)).toBe("");
  });

  it("are sent without what was left open, or given for another choice", () => {
    const given = { basis: "measured", thigh_cm: 55, measured_by: "" };
    expect(toSend(CUFF, given)).toEqual({ basis: "measured" });
  });

  it("lack a list as long as one of its rows lacks a figure", () => {
    const part = input("mass_kg");
    const plates = input("plates", { kind: "list", of: [part, input("label", { needed: false })] });
    expect(lacking([plates], { plates: [] })).toEqual(["plates"]);
    expect(lacking([plates], { plates: [{ mass_kg: 20 }, {}] })).toEqual(["plates"]);
    expect(lacking([plates], { plates: [{ mass_kg: 20 }] })).toEqual([]);
  });

  it("tell their unit and limits", () => {
    expect(limitsInWords(input("a", { unit: "kg", least: 0, most: 400 }))).toBe("kg, 0 to 400");
    expect(limitsInWords(input("a", { unit: "mm", least: 0, most: 200, above: true }))).toBe(
      "mm, above 0, to 200",
    );
    expect(limitsInWords(input("a"))).toBe("");
    expect(labelInWords(input("a", { label: "Bar", about: "its mass" }))).toBe("Bar, its mass");
  });

  it("say which may be left out", () => {
    const bound = input("upper_kg", { label: "Upper bound", needed: false });
    expect(labelInWords(bound)).toBe("Upper bound, if there is one");
    expect(labelInWords({ ...bound, default: 2 })).toBe("Upper bound");
    expect(labelInWords({ ...bound, when: { name: "basis", one_of: [] } })).toBe("Upper bound");
  });
});

describe("a refusal", () => {
  const fault = (path: string) => ({ path, where: "", what: "is out of range", right: "less" });

  it("stands at the input that it names, also at a row of a list", () => {
    const faults = [fault("inputs.plates.0.mass_kg"), fault("inputs.bar_kg")];
    expect(faultsOf(faults, "plates").map(({ path }) => path)).toEqual(["plates.0.mass_kg"]);
  });

  it("is told apart where no field is shown for it", () => {
    const faults = [fault("inputs.basis"), fault("inputs.weight")];
    expect(otherFaults(faults, CUFF).map(({ path }) => path)).toEqual(["inputs.weight"]);
  });
});
