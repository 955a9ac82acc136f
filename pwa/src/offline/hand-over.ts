/**
 * The file in which the athlete hands over what the phone could not send. The server reads it by
 * `documents/hand_over.py`: one entry a line, so that a damaged file loses the damaged line only.
 */
import { stamp } from "./clock";
import type { Identity } from "./database";
import type { Draft, Entry } from "./entry";
import type { PhoneState } from "./phone";

export interface HandOver {
  readonly name: string;
  readonly text: string;
  readonly count: number;
}

type Known = Pick<PhoneState, "identity" | "entries" | "unsaved">;

/** Everything that the server lacks, as it would be sent; null where that is nothing. */
export function handOver(state: Known, now: number): HandOver | null {
  const { identity } = state;
  if (!identity) return null;
  const entries = unsentEntries(state, identity);
  if (entries.length === 0) return null;
  const { device, epoch, athlete } = identity;
  const head = {
    format: "undercroft hand-over",
    v: 1,
    device,
    epoch,
    athlete: { id: athlete.id, name: athlete.name },
    made_at: stamp(now),
    count: entries.length,
  };
  const lines = entries.map((entry) => JSON.stringify(entry)).join(",\n");
  const text = `${JSON.stringify(head).slice(0, -1)},\n"entries": [\n${lines}\n]}\n`;
  return { name: nameOf(athlete.name, now), text, count: entries.length };
}

/**
 * What waits under this pairing; then, numbered on as the next sync would do it, what waits from an
 * earlier one and what the storage has not taken.
 */
function unsentEntries({ entries, unsaved }: Known, { device, athlete, lastN }: Identity): Entry[] {
  const waiting = entries
    .filter((kept) => kept.outbox && kept.athlete === athlete.id)
    .sort((one, other) => one.n - other.n);
  const own = waiting.filter((kept) => kept.device === device).map(({ entry }) => entry);
  const earlier = waiting.filter((kept) => kept.device !== device).map(({ entry }) => entry);
  const drafts: Draft[] = unsaved.map(({ draft }) => draft);
  // What the storage has taken since it was read last is not in `lastN` yet.
  const last = own.reduce((most, { n }) => Math.max(most, n), lastN);
  return [...own, ...[...earlier, ...drafts].map((one, at) => ({ ...one, n: last + 1 + at }))];
}

/** "undercroft-osk-venner-2026-02-06.json" */
function nameOf(athlete: string, now: number): string {
  const letters = athlete.normalize("NFKD").toLowerCase();
  const plain = letters.replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  return `undercroft-${plain || "athlete"}-${stamp(now).slice(0, 10)}.json`;
}
