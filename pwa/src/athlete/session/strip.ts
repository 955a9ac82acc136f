/** Which bar has to be stripped in an order of its own before the session goes on. */
import type { SheetExercise } from "../../api/types";
import { samePiece, type SessionView } from "./view";

/** The exercise of the last set, once none of its own is open and the next one needs another piece. */
export function toStrip(view: SessionView, next: SheetExercise | null): SheetExercise | null {
  const { last, open, session } = view;
  if (!last?.exercise.stripping) return null;
  if (open.some((step) => step.exercise === last.exercise.key)) return null;
  if (!next) return last.exercise;
  const warmed = (session.ramp[next.key] ?? 0) > 0;
  return warmed || samePiece(last.exercise, next) ? null : last.exercise;
}
