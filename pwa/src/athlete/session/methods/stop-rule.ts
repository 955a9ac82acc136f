/** When a speed exercise should end: the sheet says the limits, the phone compares. */
import { is } from "../../../offline/entry";
import type { SheetExercise } from "../../../api/types";
import type { LastSet } from "../view";
import { rule } from "./details";

export type StopCall =
  | {
      readonly by: "velocity";
      /** Mean velocities of the last set and of the best one, in m/s. */
      readonly last: number;
      readonly best: number;
      readonly limitPercent: number;
    }
  | { readonly by: "quality"; readonly limit: number };

/** So many sets of that quality or worse are enough. */
const POOR_SETS = 2;

/** What speaks for stopping after the last set of the exercise; null where nothing does. */
export function stopCall(exercise: SheetExercise, answered: readonly LastSet[]): StopCall | null {
  const limits = rule(exercise, "stop_at_loss_percent");
  const sets = answered.flatMap(({ exercise: { key }, entry }) =>
    key === exercise.key && is(entry, "set.done") ? [entry.body] : [],
  );
  if (!limits) return null;
  const speeds = sets.map((set) => set.velocities_m_s ?? []);
  return (
    slower(speeds, limits.stop_at_loss_percent ?? null) ??
    poorer(
      sets.map((set) => set.quality ?? null),
      limits.stop_at_quality ?? null,
    )
  );
}

function slower(
  sets: readonly (readonly number[])[],
  limitPercent: number | null,
): StopCall | null {
  const last = sets.at(-1) ?? [];
  const others = sets.slice(0, -1).filter((set) => set.length > 0);
  if (limitPercent === null || last.length === 0 || others.length === 0) return null;
  const best = others.reduce((one, other) => (share(other, one, 100) ? other : one));
  if (!share(best, last, 100 - limitPercent)) return null;
  return { by: "velocity", last: mean(last), best: mean(best), limitPercent };
}

/** Is the mean of the other one below that many per cent of this one's? In whole mm/s, without a division. */
function share(one: readonly number[], other: readonly number[], percent: number): boolean {
  return sumMm(other) * one.length * 100 < sumMm(one) * other.length * percent;
}

function poorer(qualities: readonly (number | null)[], limit: number | null): StopCall | null {
  const poor = (quality: number | null) => quality !== null && limit !== null && quality <= limit;
  const enough = poor(qualities.at(-1) ?? null) && qualities.filter(poor).length >= POOR_SETS;
  return enough && limit !== null ? { by: "quality", limit } : null;
}

function sumMm(velocities: readonly number[]): number {
  return velocities.reduce((sum, velocity) => sum + Math.round(velocity * 1000), 0);
}

/** To show, in m/s. */
export function mean(velocities: readonly number[]): number {
  return sumMm(velocities) / velocities.length / 1000;
}

/** "Your last set averaged 0.74 m/s, your best 0.84. The limit is 10 % slower." */
export function stopInWords(call: StopCall): string {
  if (call.by === "quality") return `Quality ${call.limit} of 5 or less, twice.`;
  const [last, best] = [call.last.toFixed(2), call.best.toFixed(2)];
  return `Your last set averaged ${last} m/s, your best ${best}. The limit is ${call.limitPercent} % slower.`;
}

/** Why the rest is left out, as the coach reads it. */
export function whyStopped(call: StopCall): string {
  return call.by === "quality"
    ? `quality ${call.limit} of 5 or less, twice`
    : `more than ${call.limitPercent} % slower than the best set`;
}
