/** What an athlete swapped in a session, and what of the gym is known to fail. */
import type { SheetExercise } from "../api/types";
import type { Bodies } from "./entry";
import type { SessionRecord } from "./fold";
import { byId } from "./heads";
import { swapKey } from "./plan";

export type Use = NonNullable<SheetExercise["uses"]>[number];

/** Was a set, by the id of its first answer, done another way than planned? */
export function wasSwapped(record: SessionRecord, planned: SheetExercise, first: string): boolean {
  const last = (record.swapped.get(planned.key) ?? []).findLast(({ id }) => id < first);
  return last !== undefined && last.body.to !== planned.exercise;
}

/**
 * Keys of what has failed for the rest of the session, each with the entry that says so: bands that broke, a
 * ceiling that is too low. What is only taken may be free again; what the athlete goes back to was fine after all.
 */
export function failed(
  exercises: readonly SheetExercise[],
  { swapped }: SessionRecord,
): ReadonlyMap<string, string> {
  const used = exercises.flatMap((each) => [each, ...(each.alternatives ?? [])]);
  const lasting = new Set(
    used.flatMap(({ uses = [] }) => uses.filter((use) => use.lasting).map(({ key }) => key)),
  );
  const found = new Map<string, string>();
  for (const { id, body } of [...swapped.values()].flat().sort(byId)) {
    for (const { key } of usesOf(exercises, body)) found.delete(key);
    if (body.missing && lasting.has(body.missing)) found.set(body.missing, id);
  }
  return found;
}

/** What the way asks for that a swap was to. */
function usesOf(
  exercises: readonly SheetExercise[],
  { exercise, to }: Bodies["exercise.swapped"],
): readonly Use[] {
  const planned = exercises.find(({ key }) => key === exercise);
  if (planned?.exercise === to) return planned.uses ?? [];
  return planned?.alternatives?.find((each) => swapKey(each) === to)?.uses ?? [];
}

/** What an exercise asks for though it has failed; nothing once the athlete has decided on it since. */
export function askedInVain(
  exercise: SheetExercise,
  failures: ReadonlyMap<string, string>,
  { swapped }: SessionRecord,
): Use | null {
  const decided = swapped.get(exercise.key)?.at(-1)?.id ?? "";
  const vain = exercise.uses?.find(({ key }) => (failures.get(key) ?? "") > decided);
  return vain ?? null;
}

type Alternative = NonNullable<SheetExercise["alternatives"]>[number];

/** Those that do without what is missing, best first as the server ranked them. */
export function without(
  alternatives: readonly Alternative[],
  missing: ReadonlySet<string>,
): Alternative[] {
  return alternatives.filter(({ uses = [] }) => !uses.some(({ key }) => missing.has(key)));
}
