/** A bout: the sets of one exercise that are done with one wrap on, on one limb or on both. */
import type { SheetExercise, SheetSet } from "../../api/types";
import { is, type Side, SIDES } from "../entry";
import type { SetRecord } from "../fold";
import { isAnswered, isSided, openSides } from "../plan";

type Records = ReadonlyMap<string, SetRecord>;

/** As entries name it: left-thigh, or thigh for both sides. */
export function limbOf({ details }: SheetExercise, side: Side | null): string {
  const limb = details && "limb" in details ? details.limb : "thigh";
  return side ? `${side}-${limb}` : limb;
}

export function sideOf(limb: string): Side | null {
  return SIDES.find((side) => limb.startsWith(`${side}-`)) ?? null;
}

/** Sets of that side that are neither done nor skipped; of a set done with both, side is null. */
export function openSets(exercise: SheetExercise, records: Records, side: Side | null): SheetSet[] {
  return exercise.sets.filter((set) => {
    const told = records.get(set.key);
    return side ? openSides(exercise, told).includes(side) : !isAnswered(exercise, told);
  });
}

/** Sides with open sets, one that was begun first; [null] where both limbs work at once. */
export function sidesOpen(exercise: SheetExercise, records: Records): (Side | null)[] {
  if (!isSided(exercise)) return openSets(exercise, records, null).length > 0 ? [null] : [];
  const open = SIDES.filter((side) => openSets(exercise, records, side).length > 0);
  return open.toSorted(
    (one, other) =>
      openSets(exercise, records, one).length - openSets(exercise, records, other).length,
  );
}

/** Repetitions of the planned sets of that side in order, up to the first that was not done. */
export function repsDone(exercise: SheetExercise, records: Records, side: Side | null): number[] {
  const reps: number[] = [];
  for (const { key } of exercise.sets) {
    const record = records.get(key);
    const entry = side ? record?.sides.get(side) : record?.entry;
    if (!entry || !is(entry, "set.done")) break;
    reps.push(entry.body.reps ?? 0);
  }
  return reps;
}
