/** The suggestion of the notch walk in words: what, and why. */
import type { SheetExercise, SheetSet } from "../../api/types";
import { is } from "../../offline/entry";
import type { SetRecord } from "../../offline/fold";
import type { Advice } from "../../offline/session-walk";
import { count } from "./sets";

const NUMBERS = ["No", "One", "Two", "Three", "Four", "Five"];

/** "Two notches up", "One notch down", "As planned". */
export function riseInWords({ rise, suggestion }: Advice): string {
  if (suggestion.reason === "hold") return "Your coach holds the plan";
  if (rise === 0) return "The plan stands";
  const size = Math.abs(rise);
  const notches = `${NUMBERS[size] ?? size} ${size === 1 ? "notch" : "notches"}`;
  return `${notches} ${rise > 0 ? "up" : "down"}`;
}

const LIMITS: Partial<Record<Advice["suggestion"]["reason"], string>> = {
  "rise-limited": "no faster than that in one go",
  "upper-bound": "your coach's limit for this set",
  "end-of-table": "the end of what was worked out",
};

interface LastTold {
  readonly set: SheetSet;
  readonly record: Pick<SetRecord, "entry">;
}

/** "5 reps with 4 in reserve, planned 2", from the last set that told something. */
export function reasonInWords({ suggestion, rise }: Advice, last: LastTold | null): string {
  const limit = LIMITS[suggestion.reason];
  const parts = [last ? lastInWords(last.set, last.record, rise) : "", limit ?? ""];
  return parts.filter((part) => part !== "").join("; ");
}

function lastInWords({ target }: SheetSet, { entry }: LastTold["record"], rise: number): string {
  if (!is(entry, "set.done") || typeof entry.body.reps !== "number") return "";
  const { reps, rir, to_failure } = entry.body;
  const reserve = to_failure ? 0 : rir;
  const told =
    count(reps, "rep") + (typeof reserve === "number" ? ` with ${reserve} in reserve` : "");
  const other = otherThanPlanned(target, reps, reserve);
  if (other !== null) return `${told}, planned ${other}`;
  // As planned, and yet it moves: the plan's load came from another maximum than this set shows.
  if (rise !== 0) return `${told}: a ${rise > 0 ? "higher" : "lower"} maximum`;
  return `${told}, as planned`;
}

/** Only what differs: "2" where the repetitions were as planned and the reserve was not. */
function otherThanPlanned(
  { reps, rir }: SheetSet["target"],
  doneReps: number,
  reserve: number | null,
): string | null {
  const otherReps = reps !== undefined && reps !== doneReps;
  const otherReserve = rir !== undefined && rir !== reserve;
  if (otherReps && otherReserve) return `${reps} with ${rir}`;
  if (otherReps) return String(reps);
  return otherReserve ? String(rir) : null;
}

/** The last set done of an exercise that had a table, in plan order. */
export function lastTold(
  exercise: SheetExercise,
  records: ReadonlyMap<string, SetRecord>,
): LastTold | null {
  for (const set of exercise.sets.toReversed()) {
    const record = records.get(set.key);
    if (record && is(record.entry, "set.done")) return { set, record };
  }
  return null;
}
