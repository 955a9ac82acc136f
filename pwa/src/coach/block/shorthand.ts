/**
 * The trade's shorthand for equal sets, typed in one line: "8x3 60% rest 75-90".
 *
 * Sets and what each holds come first: repetitions (3), seconds (30s), metres (40m) or blocks of
 * repetitions (2+2+2). Then, in any order, the load, "to failure" and the rest.
 */
import type { LoadWish, Rest } from "../../api/types";
import type { Prescription } from "./lines";

export interface Shorthand {
  readonly count: number;
  readonly asks: Prescription;
  readonly rest: Rest | null;
}

interface NotUnderstood {
  readonly what: string;
}

const MOST_SETS = 30;
const NUMBER = String.raw`(\d+(?:\.\d+)?)`;
const MORE = String.raw`([+-] ?\d+(?:\.\d+)?)?`;
const SETS = new RegExp(String.raw`^(\d+) ?x ?(?:(\d+(?:\+\d+)+)|${NUMBER} ?(s|m)?)(?= |$)`);
const REST = /(?:^| )rest (\d+(?::\d\d)?)(?: ?(?:-|–|to) ?(\d+(?::\d\d)?))? ?s?(?= |$)/;
const FAILURE = /(?:^| )to failure(?= |$)/;

type Wish = readonly [pattern: RegExp, wish: (first: number) => LoadWish];

/** Those that hold another's figure come first: "body +10 kg" is no 10 kg. */
const WISHES: readonly Wish[] = [
  [word(`body ?${MORE} ?(?:kg)?`), (kg) => ({ basis: "body", ...plus(kg) })],
  [word(`last ?${MORE} ?(?:kg)?`), (kg) => ({ basis: "last", ...plus(kg) })],
  [word(`top ${NUMBER} ?%`), (percent) => ({ basis: "top-set", percent })],
  [word(`${NUMBER} ?%`), (percent) => ({ basis: "percent", percent })],
  [word(`${NUMBER} ?kg`), (kg) => ({ basis: "kg", kg })],
  [word(`${NUMBER} ?rir`), (rir) => ({ basis: "rir", rir })],
  [word(`rir ?${NUMBER}`), (rir) => ({ basis: "rir", rir })],
  [word("no load"), () => ({ basis: "none" })],
];

/** What a line of shorthand asks for; the load is `usual` where the line names none. */
export function readShorthand(text: string, usual: LoadWish): Shorthand | NotUnderstood {
  let left = tidy(text);
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const found = pattern.exec(left);
    if (found) left = left.replace(pattern, " ").replace(/\s+/g, " ").trim();
    return found;
  };
  const sets = take(SETS);
  if (!sets) return { what: "Begin with sets × repetitions, like 8x3, 3x30s or 4x2+2+2." };
  const count = Number(sets[1]);
  if (count < 1 || count > MOST_SETS) return { what: `${count} sets; write 1 to ${MOST_SETS}.` };
  const rest = restOf(take(REST));
  const failure = take(FAILURE) !== null;
  const load = takeWish(take) ?? usual;
  if (left) return { what: `“${left}” is not understood. Write like 5x3 80% rest 120-180.` };
  const asks = { ...contentOf(sets), load, ...(failure ? { to_failure: true } : {}) };
  return { count, asks, rest };
}

function tidy(text: string): string {
  const plain = text.toLowerCase().replaceAll("×", "x").replaceAll("−", "-");
  return plain
    .replace(/,(?=\d)/g, ".")
    .replace(/@|\bat\b/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

function word(pattern: string): RegExp {
  return new RegExp(`(?:^| )${pattern}(?= |$)`);
}

function takeWish(take: (pattern: RegExp) => RegExpExecArray | null): LoadWish | null {
  for (const [pattern, wish] of WISHES) {
    const found = take(pattern);
    if (found) return wish(Number((found[1] ?? "0").replace(" ", "")));
  }
  return null;
}

function contentOf(sets: RegExpExecArray): Omit<Prescription, "load"> {
  const [, , blocks, number, unit] = sets;
  if (blocks) return { blocks: blocks.split("+").map(Number) };
  if (unit === "s") return { seconds: Number(number) };
  return unit === "m" ? { distance_m: Number(number) } : { reps: Math.trunc(Number(number)) };
}

function plus(kg: number): { add_kg?: number } {
  return kg === 0 ? {} : { add_kg: kg };
}

function restOf(found: RegExpExecArray | null): Rest | null {
  if (!found?.[1]) return null;
  const from = seconds(found[1]);
  return { from_s: from, to_s: Math.max(from, seconds(found[2] ?? found[1])) };
}

/** "90" or "1:30". */
function seconds(text: string): number {
  const [first = "0", second] = text.split(":");
  return second === undefined ? Number(first) : Number(first) * 60 + Number(second);
}
