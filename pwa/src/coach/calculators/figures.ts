/** Figures of a result as they are read: kilograms as plates make them, others to three figures or so. */
import type { Calculation } from "../answers";
import { figure, kilos } from "../block/wish-words";

type Figure = Calculation["result"][number];

function valueInWords({ value, unit }: Figure): string {
  if (unit === "kg") return kilos(value);
  const size = Math.abs(value);
  return figure(size >= 100 ? Math.round(value) : size >= 10 ? to(value, 1) : to(value, 2));
}

/** "83.1 mmHg", "6". */
export function figureInWords(one: Figure): string {
  return [valueInWords(one), one.unit].filter(Boolean).join(" ");
}

function to(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
