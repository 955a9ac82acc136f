/** What a maximum test of single attempts has found, as it goes to the tracker. */
import type { SheetExercise } from "../../../api/types";
import { type Bodies, type Draft, is } from "../../../offline/entry";
import type { SessionRecord } from "../../../offline/fold";
import { heads } from "../../../offline/heads";
import type { Session } from "../../../offline/ledger-view";
import { rule } from "./details";

/** The heaviest attempt that was made, in kg. */
export function bestAttempt(exercise: SheetExercise, record: SessionRecord): number | null {
  const made = exercise.sets.flatMap(({ key }) => {
    const entry = record.sets.get(key)?.entry;
    if (!entry || !is(entry, "set.done")) return [];
    const { reps, load_kg } = entry.body;
    return reps !== null && reps > 0 && load_kg !== null ? [load_kg] : [];
  });
  return made.length > 0 ? Math.max(...made) : null;
}

interface Tested {
  readonly body: Bodies["max.tested"];
  /** What was told before of the same test. */
  readonly replaces: string | null;
}

/**
 * What is to be told of a test now; null where that has been told, or the test goes on. A test that was
 * told is told anew as attempts are corrected; 0 kg takes it back.
 */
export function toTell(exercise: SheetExercise, session: Session, over: boolean): Tested | null {
  if ((rule(exercise, "attempts")?.reps ?? 1) > 1 || exercise.method !== "maximum-test")
    return null;
  const told = lastTold(exercise.exercise, session);
  const done = over || exercise.sets.every(({ key }) => session.record.sets.has(key));
  if (!told && !done) return null;
  const kg = bestAttempt(exercise, session.record) ?? 0;
  if (kg === (told?.kg ?? 0)) return null;
  const body = { lift: exercise.exercise, kg, conditions: exercise.implement.name };
  return { body, replaces: told?.id ?? null };
}

function lastTold(
  lift: string,
  { entries }: Session,
): { readonly id: string; readonly kg: number } | null {
  const tests = entries
    .map(({ entry }) => entry)
    .filter((entry: Draft) => is(entry, "max.tested") && entry.body.lift === lift);
  const last = heads(tests).at(-1);
  return last && is(last, "max.tested") ? { id: last.id, kg: last.body.kg } : null;
}
