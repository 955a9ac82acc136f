/** The wrap that is on, with what its exercise says of it. */
import type { SheetExercise, SheetSet } from "../../api/types";
import type { Side } from "../../offline/entry";
import { isOver, type Placed, type Session, steadyOf } from "../../offline/ledger-view";
import { openSets, sideOf } from "../../offline/occlusion/bouts";
import { type Wrap, wornS } from "../../offline/occlusion/wear";
import { exercisesOf } from "../../offline/plan";
import type { Times } from "../../offline/steady";
import type { Tell } from "./known";

/** On one limb at the very most (common practice), where the exercise is not known any more. */
const LONGEST_S = 900;
const BREAK_S = 180;

export interface Worn {
  readonly wrap: Wrap;
  readonly session: Session | null;
  readonly exercise: SheetExercise | null;
  readonly side: Side | null;
  /** Sets still to be done with it. */
  readonly open: readonly SheetSet[];
  readonly limitS: number;
  readonly breakS: number;
}

export function wornOf(wrap: Wrap, sessions: readonly Session[]): Worn {
  const side = sideOf(wrap.limb);
  const session = sessions.findLast(({ sheet }) => sheet.session === wrap.session) ?? null;
  const exercise = session && exerciseOf(session, wrap.set);
  return {
    wrap,
    session: session && isOver(session.record) ? null : session,
    exercise,
    side,
    open: session && exercise ? openSets(exercise, session.record.sets, side) : [],
    limitS: exercise?.occlusion?.limit_s ?? LONGEST_S,
    breakS: exercise?.occlusion?.break_s ?? BREAK_S,
  };
}

export function exerciseOf({ sheet, record }: Session, set: string | null): SheetExercise | null {
  const exercises = exercisesOf(sheet, record);
  return exercises.find(({ sets }) => sets.some(({ key }) => key === set)) ?? null;
}

/** Why the wrap has to come off now; null: it may stay on. */
export type Off = "limit" | "unknown" | "over" | "done";

export function offNow({ session, open, limitS }: Worn, seconds: number | null): Off | null {
  if (seconds === null) return "unknown";
  if (seconds >= limitS) return "limit";
  if (!session) return "over";
  return open.length === 0 ? "done" : null;
}

/** Where nobody knows how long it was on, it counts as worn up to the limit. */
export function takeOff(tell: Tell, { wrap, limitS }: Worn, seconds: number | null): void {
  const { limb, revision, session, set } = wrap;
  void tell("wrap.off", { limb, seconds: seconds ?? limitS }, { revision, session, set });
}

/** As `takeOff` of everything that is on. */
export function takeAllOff(
  tell: Tell,
  wraps: readonly Wrap[],
  sessions: readonly Session[],
  times: Times,
): void {
  for (const wrap of wraps) takeOff(tell, wornOf(wrap, sessions), wornS(wrap, times));
}

/** The last wrap that came off, as long as its break goes on. */
export interface Resting {
  /** On the steady clock. */
  readonly offAt: number;
  readonly breakS: number;
  readonly session: Session | null;
  readonly exercise: SheetExercise | null;
}

export function restingSince(
  off: Placed | undefined,
  sessions: readonly Session[],
): Resting | null {
  if (!off) return null;
  const { entry } = off;
  const session = sessions.findLast(({ sheet }) => sheet.session === entry.session) ?? null;
  const exercise = session && exerciseOf(session, entry.set);
  const breakS = exercise?.occlusion?.break_s ?? BREAK_S;
  return { offAt: steadyOf(off), breakS, session, exercise };
}
