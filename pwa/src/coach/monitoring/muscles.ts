/** Hard sets turned from weeks to muscles. */
import type { WorkWeek } from "../answers";
import { figure } from "../block/wish-words";

export interface MuscleWeeks {
  readonly muscle: string;
  /** One for each week, oldest first. */
  readonly sets: readonly number[];
}

/** Every muscle that was worked, the one with most hard sets first. */
export function musclesOf(weeks: readonly WorkWeek[]): MuscleWeeks[] {
  const names = new Set(weeks.flatMap((week) => Object.keys(week.hard_sets)));
  return [...names]
    .map((muscle) => ({ muscle, sets: weeks.map((week) => week.hard_sets[muscle] ?? 0) }))
    .toSorted(
      (one, other) => sum(other.sets) - sum(one.sets) || (one.muscle < other.muscle ? -1 : 1),
    );
}

/** "back-extensors" as it is read. */
export function muscleName(key: string): string {
  const words = key.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function setsOf({ sets }: MuscleWeeks): string {
  return sets.map(figure).join(", ");
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((whole, one) => whole + one, 0);
}
