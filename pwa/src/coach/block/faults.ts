/** Which faults and findings stand beside which line. */

export interface Placed {
  /** As in "weeks.0.sessions.1.exercises.2.sets.0"; "" is the document. */
  readonly path: string;
}

/** Those of the thing at `path`, of its fields and of all that is inside. */
export function within<T extends Placed>(all: readonly T[], path: string): T[] {
  if (path === "") return [...all];
  return all.filter((each) => each.path === path || each.path.startsWith(`${path}.`));
}

/** Those of the thing at `path` that do not speak of one item of the `list` inside it. */
export function own<T extends Placed>(all: readonly T[], path: string, list: string): T[] {
  const inside = path === "" ? `${list}.` : `${path}.${list}.`;
  return within(all, path).filter((each) => !each.path.startsWith(inside));
}
