/** Entries in the order in which they were made, as far as anybody can tell. */
import type { Entry } from "../entry";
import type { Placed } from "../ledger-view";

/**
 * By their place in the ledger, and those without one after that by their number: ids rise with the
 * phone's clock, and that may have been set back while a wrap was on.
 */
export function inOrder(entries: readonly Placed[]): Placed[] {
  return entries.toSorted((one, other) => {
    const byPlace = rank(one.position) - rank(other.position);
    return byPlace === 0 ? rank(numberOf(one)) - rank(numberOf(other)) : byPlace;
  });
}

function numberOf({ entry }: Placed): number | null {
  return (entry as Partial<Entry>).n ?? null;
}

function rank(value: number | null): number {
  return value ?? Number.MAX_SAFE_INTEGER;
}

/** The calendar day that the phone's clock showed. */
export function dayOf({ entry }: Placed): string {
  return entry.at.slice(0, 10);
}

export function msOf({ entry }: Placed): number {
  return Date.parse(entry.at);
}
