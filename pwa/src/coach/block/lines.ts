/**
 * Lines: sets that follow each other and ask for the same are written as one line, "8 × 3 at 60 %".
 * A line is a view of the sets; each set keeps its own key.
 */
import type { SetPlan } from "../../api/types";
import { alike } from "./alike";
import { freshKey, type Random } from "./keys";
import { inserted, moved, without } from "./lists";

export type Prescription = Omit<SetPlan, "key">;

export interface Line {
  readonly from: number;
  readonly sets: readonly SetPlan[];
  readonly asks: SetPlan;
}

/** The lines of an exercise. A set whose key is in `starts` begins a line even if it asks the same. */
export function linesOf(sets: readonly SetPlan[], starts: ReadonlySet<string>): Line[] {
  const lines: { from: number; sets: SetPlan[]; asks: SetPlan }[] = [];
  for (const [place, set] of sets.entries()) {
    const line = lines.at(-1);
    if (line && !starts.has(set.key) && asksTheSame(line.asks, set)) line.sets.push(set);
    else lines.push({ from: place, sets: [set], asks: set });
  }
  return lines;
}

export function asksTheSame(one: SetPlan, other: SetPlan): boolean {
  return alike({ ...one, key: "" }, { ...other, key: "" });
}

/** Changes what every set of the line asks for; a field set to undefined goes away. */
export function changeLine(
  sets: readonly SetPlan[],
  line: Line,
  change: Partial<Prescription>,
): SetPlan[] {
  return sets.map((set, place) => (isIn(line, place) ? present({ ...set, ...change }) : set));
}

/** Lengthens or shortens the line at its end. The last set of a line is not taken away. */
export function countLine(
  sets: readonly SetPlan[],
  line: Line,
  count: number,
  taken: ReadonlySet<string>,
  random: Random,
): SetPlan[] {
  const wanted = Math.min(Math.max(1, Math.trunc(count)), line.sets.length + 30 - sets.length);
  const end = line.from + line.sets.length;
  const missing = wanted - line.sets.length;
  if (missing <= 0) return without(sets, end + missing, -missing);
  return inserted(sets, end, ...keyed(line.asks, missing, taken, random));
}

/** Adds `count` equal sets at the end. */
export function addLine(
  sets: readonly SetPlan[],
  asks: Prescription,
  count: number,
  taken: ReadonlySet<string>,
  random: Random,
): SetPlan[] {
  return [...sets, ...keyed(asks, count, taken, random)];
}

/** The line once more, right after itself. */
export function copyLine(
  sets: readonly SetPlan[],
  line: Line,
  taken: ReadonlySet<string>,
  random: Random,
): SetPlan[] {
  const copies = keyed(line.asks, line.sets.length, taken, random);
  return inserted(sets, line.from + line.sets.length, ...copies);
}

export function removeLine(sets: readonly SetPlan[], line: Line): SetPlan[] {
  return without(sets, line.from, line.sets.length);
}

/** Changes places with the line before (-1) or after (1). */
export function moveLine(lines: readonly Line[], at: number, step: -1 | 1): SetPlan[] {
  return moved(lines, at, at + step).flatMap((line) => line.sets);
}

function isIn(line: Line, place: number): boolean {
  return place >= line.from && place < line.from + line.sets.length;
}

function keyed(
  asks: Prescription,
  count: number,
  taken: ReadonlySet<string>,
  random: Random,
): SetPlan[] {
  const keys = new Set(taken);
  return Array.from({ length: count }, () => {
    const key = freshKey(keys, random);
    keys.add(key);
    return { ...asks, key };
  });
}

function present(set: SetPlan): SetPlan {
  return Object.fromEntries(
    Object.entries(set).filter(([, value]) => value !== undefined),
  ) as SetPlan;
}
