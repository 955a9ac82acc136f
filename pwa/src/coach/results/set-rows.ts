/** Sets of a result that need no line of their own are told together: "1–6". */
import type { ResultSet } from "../answers";

export interface SetRow {
  readonly numbers: string;
  /** The number of the last set of the row. */
  readonly last: number;
  readonly set: ResultSet;
}

/**
 * Sets that follow each other, were planned the same and have no answer yet, become one row; one
 * whose sides were both told becomes two.
 */
export function setRows(sets: readonly ResultSet[]): SetRow[] {
  return together(sets).flatMap((row) => (row.set.sides.length > 1 ? apart(row) : [row]));
}

/** The side stands before the row, and not once more in what was done. */
function apart({ numbers, last, set }: SetRow): SetRow[] {
  return set.sides.map((done) => ({
    numbers: `${numbers} ${done.side}`,
    last,
    set: { ...set, done: { ...done, side: null } },
  }));
}

function together(sets: readonly ResultSet[]): SetRow[] {
  const groups: { set: ResultSet; last: number }[] = [];
  for (const set of sets) {
    const before = groups.at(-1);
    if (before && isSilentTwin(before.set, set)) before.last = set.number;
    else groups.push({ set, last: set.number });
  }
  return groups.map(({ set, last }) => ({
    numbers: set.number === last ? `${last}` : `${set.number}–${last}`,
    last,
    set,
  }));
}

function isSilentTwin(one: ResultSet, other: ResultSet): boolean {
  const { planned } = one;
  return (
    one.done === null &&
    other.done === null &&
    planned.load_kg === other.planned.load_kg &&
    planned.reps === other.planned.reps &&
    planned.rir === other.planned.rir &&
    planned.seconds === other.planned.seconds &&
    planned.distance_m === other.planned.distance_m &&
    planned.blocks.join() === other.planned.blocks.join()
  );
}
