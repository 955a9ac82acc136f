/** The inputs of a calculator: which are asked for, which lack, what goes to the server. */
import type { Fault } from "../../api/client";
import type { CalculatorInput } from "../answers";
import { within } from "../block/faults";

/** What was given so far, by the name of the input. */
export type Given = Readonly<Record<string, unknown>>;
export type Row = Readonly<Record<string, unknown>>;

type Part = Omit<CalculatorInput, "of" | "when">;

/** The inputs that the choices made so far ask for. */
export function askedFor(inputs: readonly CalculatorInput[], given: Given): CalculatorInput[] {
  return inputs.filter(({ when }) => {
    if (!when) return true;
    const by = inputs.find(({ name }) => name === when.name);
    return by !== undefined && when.one_of.includes(chosen(by, given[by.name]));
  });
}

/** The value of a choice: as given, or else the usual one; "" where there is none yet. */
export function chosen(input: Pick<Part, "default">, value: unknown): string {
  if (typeof value === "string") return value;
  return typeof input.default === "string" ? input.default : "";
}

/** Labels of what is still needed before anything can be worked out. */
export function lacking(inputs: readonly CalculatorInput[], given: Given): string[] {
  const empty = askedFor(inputs, given).filter((input) => {
    const value = given[input.name];
    if (!isGiven(value)) return input.needed || input.when !== null;
    return Array.isArray(value) && value.some((row: Row) => !isWhole(input.of, row));
  });
  return empty.map(({ label }) => label);
}

/** What is sent: only what is asked for, and nothing that was left open. */
export function toSend(inputs: readonly CalculatorInput[], given: Given): Given {
  const names = askedFor(inputs, given).map(({ name }) => name);
  return Object.fromEntries(names.flatMap((name) => entry(name, given[name])));
}

/** The faults of one input; its own path stands for the document's. */
export function faultsOf(faults: readonly Fault[], name: string): Fault[] {
  return within(faults.map(bare), name);
}

/** The faults that no field shows. */
export function otherFaults(faults: readonly Fault[], shown: readonly CalculatorInput[]): Fault[] {
  return faults.filter((fault) => !shown.some(({ name }) => faultsOf([fault], name).length > 0));
}

/** "kg, 0 to 400", "mm, above 0, to 200", "repetitions, 1 to 15". */
export function limitsInWords({ unit, least, most, above }: Part): string {
  const from = least === null ? "" : above ? `above ${least},` : `${least}`;
  const span = [from, most === null ? "" : `to ${most}`].filter(Boolean).join(" ");
  return [unit, span].filter(Boolean).join(", ");
}

/** The label with what is said about it; and where an input may be left out, that. */
export function labelInWords(input: Omit<CalculatorInput, "of">): string {
  const { label, about, needed, default: usual, when } = input;
  const open = !needed && usual === null && when === null;
  return [label, about, open ? "if there is one" : ""].filter(Boolean).join(", ");
}

function entry(name: string, value: unknown): [string, unknown][] {
  return isGiven(value) ? [[name, value]] : [];
}

function isGiven(value: unknown): boolean {
  if (value === undefined || value === null || value === "") return false;
  return !Array.isArray(value) || value.length > 0;
}

function isWhole(parts: readonly Part[], row: Row): boolean {
  return parts.every(({ name, needed }) => !needed || isGiven(row[name]));
}

function bare(fault: Fault): Fault {
  return { ...fault, path: fault.path.replace(/^inputs\./, "") };
}
