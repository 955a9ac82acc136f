/** The set at hand: which side of it, and whether it is done for the first time or corrected. */
import type { SheetExercise, SheetSet } from "../../api/types";
import type { Side } from "../../offline/entry";
import { type Answer, answerKey, type SetRecord } from "../../offline/fold";
import { openSides } from "../../offline/plan";
import type { SessionView } from "./view";

export interface AtHand {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
  readonly set: SheetSet;
  /** Of a one-sided set, the side that is told now; else null. */
  readonly side: Side | null;
  readonly record: SetRecord | undefined;
  /** What was recorded of it: present where it is corrected. */
  readonly answer: Answer | undefined;
  /** Of this set and side, as clocks and corrections name it. */
  readonly key: string;
}

/** `wanted` is the side to be corrected; without one it is the side that comes next. */
export function atHand(
  view: SessionView,
  exercise: SheetExercise,
  set: SheetSet,
  wanted: Side | null,
): AtHand {
  const record = view.session.record.sets.get(set.key);
  const side = wanted ?? openSides(exercise, record)[0] ?? null;
  const answer = side ? record?.sides.get(side) : record?.entry;
  return { view, exercise, set, side, record, answer, key: answerKey(set.key, side) };
}
