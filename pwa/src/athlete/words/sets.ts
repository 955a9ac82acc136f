/** Sets in words: what is asked for, and what was done. */
import type { SheetExercise, SheetSet } from "../../api/types";
import { is } from "../../offline/entry";
import type { SetRecord } from "../../offline/fold";
import { loadInWords } from "./loads";
import type { Units } from "./mass";
import { duration } from "./times";

type Target = SheetSet["target"];

export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

/** "5 reps, 2 in reserve", "40 s", "to failure, aim for 30". */
export function targetInWords(target: Target, exercise?: SheetExercise): string {
  const parts = [repsInWords(target), ...rest(target)].filter((part) => part !== "");
  if (exercise?.method === "one-sided") parts.push("each side");
  return parts.join(", ") || "as you see fit";
}

function repsInWords({ reps, to_failure, blocks = [] }: Target): string {
  if (blocks.length > 0) return `blocks of ${blocks.join(" + ")}`;
  if (to_failure) return reps ? `to failure, aim for ${reps}` : "to failure";
  return reps ? count(reps, "rep") : "";
}

function rest({ seconds, distance_m, rir, to_failure }: Target): string[] {
  return [
    seconds ? duration(seconds) : "",
    distance_m ? `${distance_m} m` : "",
    rir === undefined || to_failure ? "" : `${rir} in reserve`,
  ];
}

/** "5 reps at 92.5 kg, 2 in reserve", "skipped: no time". */
export function doneInWords(
  { entry }: SetRecord,
  exercise: SheetExercise | undefined,
  units: Units,
): string {
  if (!is(entry, "set.done")) return `skipped: ${entry.body.why}`;
  const { load_kg, reps, rir, seconds, to_failure, quality } = entry.body;
  const what = [
    typeof reps === "number" ? count(reps, "rep") : "",
    seconds === undefined ? "" : duration(seconds),
  ].filter((part) => part !== "");
  const load = typeof load_kg === "number" ? ` at ${loadInWords(exercise, load_kg, units)}` : "";
  const more = [
    to_failure ? "to failure" : typeof rir === "number" ? `${rir} in reserve` : "",
    quality === undefined ? "" : `quality ${quality}`,
  ].filter((part) => part !== "");
  return [`${what.join(", ") || "done"}${load}`, ...more].join(", ");
}
