/** Which entries count: those that no other one replaces. The same rule as the server's ledger. */
import type { Draft } from "./entry";

/**
 * Entries that no other one of them replaces, in the order of ids. Entries that replace each other in
 * a circle, which no honest phone makes, replace nothing.
 */
export function heads<E extends Draft>(entries: readonly E[]): E[] {
  const circular = inCircles(entries);
  const replaced = new Set<string>();
  for (const { id, replaces } of entries) {
    if (replaces !== null && !circular.has(id)) replaced.add(replaces);
  }
  return entries.filter((entry) => !replaced.has(entry.id)).sort(byId);
}

export function byId(one: Draft, other: Draft): number {
  if (one.id === other.id) return 0;
  return one.id < other.id ? -1 : 1;
}

/** Ids of entries that, followed from one to what it replaces, come back to themselves. */
function inCircles(entries: readonly Draft[]): ReadonlySet<string> {
  const circular = new Set<string>();
  if (entries.every(({ id, replaces }) => replaces === null || replaces < id)) return circular;
  const next = new Map(entries.map(({ id, replaces }) => [id, replaces]));
  const seenFrom = new Map<string, string>();
  for (const start of next.keys()) {
    const path: string[] = [];
    let here: string | null | undefined = start;
    while (typeof here === "string" && next.has(here) && !seenFrom.has(here)) {
      seenFrom.set(here, start);
      path.push(here);
      here = next.get(here);
    }
    const closed = typeof here === "string" && seenFrom.get(here) === start && path.includes(here);
    if (closed) for (const id of path.slice(path.indexOf(here as string))) circular.add(id);
  }
  return circular;
}
