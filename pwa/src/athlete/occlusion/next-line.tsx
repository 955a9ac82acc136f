import type { SheetExercise } from "../../api/types";
import { type Side, SIDES } from "../../offline/entry";
import type { Session } from "../../offline/ledger-view";
import { openSets, repsDone } from "../../offline/occlusion/bouts";
import { lighter, nextLoad } from "../../offline/occlusion/next-load";
import { isSided } from "../../offline/plan";
import { useUnits } from "../hooks";
import { nextInWords } from "./words";

interface Props {
  readonly exercise: SheetExercise;
  readonly session: Session;
}

/** Next time's load, once the last limb is done. */
export function NextLine({ exercise, session }: Props) {
  const units = useUnits();
  const table = exercise.occlusion?.next;
  const { sets, stopped } = session.record;
  const sides: (Side | null)[] = isSided(exercise) ? [...SIDES] : [null];
  if (!table || sides.some((side) => openSets(exercise, sets, side).length > 0)) return null;
  const signs = (stopped?.body.signs ?? []).length > 0;
  const next = sides
    .map((side) => nextLoad(table, repsDone(exercise, sets, side), signs))
    .reduce(lighter);
  return <p class="next-line">{nextInWords(next, units)}</p>;
}
