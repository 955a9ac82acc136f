/** Occlusion work in words. */
import type { OcclusionRule, SheetExercise, SheetSet } from "../../api/types";
import type { NextLoad } from "../../offline/occlusion/next-load";
import { mass, type Units } from "../words/mass";
import { clockTime, relativeDay } from "../words/times";

const LIMBS: Readonly<Record<string, readonly [string, string]>> = {
  "upper-arm": ["upper arm", "upper arms"],
  thigh: ["thigh", "thighs"],
  calf: ["calf", "calves"],
};

/** "left upper arm", "both thighs". */
export function limbInWords(limb: string): string {
  const [, side, name] = /^(?:(left|right)-)?(.+)$/.exec(limb) ?? [];
  const [one, both] = LIMBS[name ?? limb] ?? [limb, limb];
  return side ? `${side} ${one}` : `both ${both}`;
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function ruleOf({ details }: SheetExercise): OcclusionRule | null {
  return details && "restriction" in details ? details : null;
}

/** "wrap", "wraps", "cuff". */
export function pieceIn(exercise: SheetExercise | null, many: boolean): string {
  const piece = (exercise && ruleOf(exercise)?.restriction) ?? "wrap";
  return many ? `${piece}s` : piece;
}

/** "30-15-15, the last to failure" */
export function setsInWords(sets: readonly SheetSet[]): string {
  const reps = sets.map(({ target }) => target.reps ?? "failure").join("-");
  const failing = sets.filter(({ target }) => target.to_failure && target.reps).length;
  if (failing === 0) return reps;
  const which = failing === 1 ? "the last" : `the last ${failing === 2 ? "two" : failing}`;
  return failing === sets.length ? `${reps}, all to failure` : `${reps}, ${which} to failure`;
}

/** "about 6 min" */
export function aboutMinutes(seconds: number): string {
  return `about ${Math.max(1, Math.round(seconds / 60))} min`;
}

/** From this exposure on sets go to failure, or near it. */
const FULL_DOSE = 5;

/** What is usual in that set; null where the target is not above it. */
export function usualInWords(exercise: SheetExercise, set: SheetSet): string | null {
  const { expected = [], exposure = 1 } = exercise.occlusion ?? {};
  const place = exercise.sets.indexOf(set);
  const usual = Math.floor(expected[place] ?? Infinity);
  if (exposure < FULL_DOSE || place < 2 || !(usual < (set.target.reps ?? 0))) return null;
  const left = expected.slice(2).map((mean) => String(Math.floor(mean)));
  const where = left.length > 1 ? "in the third and fourth" : "in the third";
  return `${left.join(" and ")} are usual ${where}. Fewer than ${set.target.reps} is no fault.`;
}

/** Next time's load, told in a line. */
export function nextInWords({ step, kg }: NextLoad, units: Units): string {
  const load = mass(kg, units);
  switch (step) {
    case "up":
      return `Next time ${load}: the last set went above its target.`;
    case "hold":
      return `Next time the same, ${load}.`;
    case "down":
      return `Next time ${load}: the first set stayed short.`;
    case "down-a-tenth":
      return `Next time ${load}. That was under half of the reps: wrap too tight, load wrong, or unwell? Tell your coach.`;
  }
}

/** "at 18:40", "tomorrow at 6:10" */
export function whenInWords(at: number, now: number): string {
  const day = relativeDay(at, now);
  return day === "today" ? `at ${clockTime(at)}` : `${day} at ${clockTime(at)}`;
}
