/** What a set asks for, in words and figures. */
import type { LoadWish, Rest } from "../../api/types";
import type { Prescription } from "./lines";

export const WISH_NAMES: Readonly<Record<LoadWish["basis"], string>> = {
  percent: "% of maximum",
  kg: "kg",
  rir: "reps in reserve",
  last: "as last time",
  "top-set": "% of the top set",
  body: "own body",
  none: "no load",
};

/** A number as it is read: at most three decimals, a real minus sign. */
export function figure(value: number): string {
  return String(Math.round(value * 1000) / 1000).replace("-", "−");
}

/** Kilograms as they are read: what plates make to the gram, what a cable gives to a tenth. */
export function kilos(kg: number): string {
  const twentieths = Math.round(kg * 20) / 20;
  return figure(Math.abs(twentieths - kg) < 1e-6 ? twentieths : Math.round(kg * 10) / 10);
}

export function signed(value: number): string {
  return value > 0 ? `+${figure(value)}` : figure(value);
}

export function wishInWords(wish: LoadWish): string {
  switch (wish.basis) {
    case "percent":
      return `at ${figure(wish.percent)} % of the maximum`;
    case "kg":
      return wish.in_hand ? `with ${figure(wish.kg)} kg in the hand` : `with ${figure(wish.kg)} kg`;
    case "rir":
      return `with ${figure(wish.rir)} in reserve`;
    case "last":
      return wish.add_kg ? `as last time ${signed(wish.add_kg)} kg` : "as last time";
    case "top-set":
      return `at ${figure(wish.percent)} % of the top set`;
    case "body":
      return wish.add_kg ? `own body ${signed(wish.add_kg)} kg` : "own body";
    case "none":
      return "without load";
  }
}

/** What one set holds: repetitions, blocks, seconds or metres. */
export function contentInWords(asks: Prescription): string {
  const parts = [
    asks.blocks?.length ? asks.blocks.join(" + ") : "",
    asks.reps ? String(asks.reps) : "",
    asks.seconds ? `${figure(asks.seconds)} s` : "",
    asks.distance_m ? `${figure(asks.distance_m)} m` : "",
  ];
  const content = parts.filter(Boolean).join(", ") || "—";
  return asks.to_failure ? `${content}, on to failure` : content;
}

export function restInWords(rest: Rest): string {
  const span = rest.from_s === rest.to_s ? `${rest.from_s}` : `${rest.from_s}–${rest.to_s}`;
  return `rest ${span} s`;
}

/** "8 sets of 3 at 60 % of the maximum". */
export function lineInWords(count: number, asks: Prescription): string {
  const sets = count === 1 ? "1 set" : `${count} sets`;
  return `${sets} of ${contentInWords(asks)} ${wishInWords(asks.load)}`;
}
