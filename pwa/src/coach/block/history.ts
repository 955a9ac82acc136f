/** Undo and redo: every state of a document, with keystrokes in one field counted as one step. */

const STEPS_KEPT = 200;
const ONE_STEP_MS = 1_500;

export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** The field of the last change, and when it was made. */
  readonly last: { readonly field: string; readonly at: number } | null;
}

export function beginning<T>(present: T): History<T> {
  return { past: [], present, future: [], last: null };
}

/**
 * The history after a change. Changes to the same `field` that follow each other quickly become
 * one step; an empty `field` is always a step of its own.
 */
export function changed<T>(history: History<T>, next: T, field: string, now: number): History<T> {
  if (next === history.present) return history;
  const { last, past, present } = history;
  const goesOn = field !== "" && last?.field === field && now - last.at < ONE_STEP_MS;
  return {
    past: goesOn ? past : [...past, present].slice(-STEPS_KEPT),
    present: next,
    future: [],
    last: { field, at: now },
  };
}

export function undone<T>(history: History<T>): History<T> {
  const before = history.past.at(-1);
  if (before === undefined) return history;
  const future = [history.present, ...history.future];
  return { past: history.past.slice(0, -1), present: before, future, last: null };
}

export function redone<T>(history: History<T>): History<T> {
  const [after, ...future] = history.future;
  if (after === undefined) return history;
  return { past: [...history.past, history.present], present: after, future, last: null };
}
