/** Sets in words: what is asked for, and what was done. */
import type { SheetExercise, SheetSet } from "../../api/types";
import { is, type SetDone } from "../../offline/entry";
import type { Answer, SetRecord } from "../../offline/fold";
import { atLoad, loadInWords } from "./loads";
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

/** "5 reps at 92.5 kg, 2 in reserve", "skipped: no time"; "left …; right …" where told apart. */
export function doneInWords(
  { entry, sides }: SetRecord,
  exercise: SheetExercise | undefined,
  units: Units,
): string {
  if (sides.size === 0) return answerInWords(entry, exercise, units);
  return [...sides]
    .map(([side, answer]) => `${side} ${answerInWords(answer, exercise, units)}`)
    .join("; ");
}

export function answerInWords(
  entry: Answer,
  exercise: SheetExercise | undefined,
  units: Units,
): string {
  if (!is(entry, "set.done")) return `skipped: ${entry.body.why}`;
  const { load_kg } = entry.body;
  const load = typeof load_kg === "number" ? atLoad(loadInWords(exercise, load_kg, units)) : "";
  const what = exercise?.method === "maximum-test" ? attempted(entry.body) : worked(entry.body);
  return [`${what.join(", ") || "done"}${load}`, ...felt(entry.body)].join(", ");
}

function attempted({ reps, rir }: SetDone): string[] {
  if (reps === 0) return ["missed"];
  return reps === 1 && rir === null ? ["made"] : [count(reps ?? 0, "rep")];
}

function worked({ reps, blocks, seconds, distance_m }: SetDone): string[] {
  const inBlocks = blocks && blocks.length > 0 ? `blocks of ${blocks.join(" + ")}` : "";
  return [
    inBlocks || (typeof reps === "number" ? count(reps, "rep") : ""),
    distance_m === undefined ? "" : `${distance_m} m`,
    seconds === undefined ? "" : duration(seconds),
  ].filter((part) => part !== "");
}

function felt({ rir, to_failure, quality, velocities_m_s = [] }: SetDone): string[] {
  return [
    to_failure ? "to failure" : typeof rir === "number" ? `${rir} in reserve` : "",
    quality === undefined ? "" : `quality ${quality}`,
    velocities_m_s.length > 0 ? `${velocities_m_s.map((v) => v.toFixed(2)).join(" ")} m/s` : "",
  ].filter((part) => part !== "");
}
