/** Everything that the phone holds, read at once; and pairing, which changes whose it is. */
import type { FeedItem, Paired } from "../api/sync";
import type {
  Facts,
  Identity,
  Kept,
  Notes,
  Pin,
  Settings,
  Transaction,
  TrendPoint,
} from "./database";
import { identityIn } from "./ledger-store";
import type { Storage } from "./storage";

export interface Holdings {
  readonly identity: Identity | null;
  readonly settings: Settings;
  readonly notes: Notes;
  readonly entries: readonly Kept[];
  readonly feed: readonly FeedItem[];
  readonly pins: readonly Pin[];
  readonly trend: readonly TrendPoint[];
}

export const NOTHING: Holdings = {
  identity: null,
  settings: {},
  notes: {},
  entries: [],
  feed: [],
  pins: [],
  trend: [],
};

export function readAll(storage: Storage): Promise<Holdings> {
  return storage.run("readonly", async (transaction) => {
    const facts = transaction.objectStore("facts");
    const [identity, settings, notes, entries, feed, pins, trend] = await Promise.all([
      identityIn(transaction),
      facts.get("settings"),
      facts.get("notes"),
      transaction.objectStore("entries").getAll(),
      transaction.objectStore("feed").getAll(),
      transaction.objectStore("pins").getAll(),
      transaction.objectStore("trend").getAll(),
    ]);
    return {
      identity,
      settings: (settings ?? {}) as Settings,
      notes: (notes ?? {}) as Notes,
      entries,
      feed,
      pins,
      trend,
    };
  });
}

export function readIdentity(storage: Storage): Promise<Identity | null> {
  return storage.run("readonly", identityIn);
}

export function saveFact<K extends "settings" | "notes">(
  storage: Storage,
  name: K,
  change: Partial<Facts[K]>,
): Promise<Facts[K]> {
  return storage.run("readwrite", async (transaction) => {
    const facts = transaction.objectStore("facts");
    const changed: Facts[K] = { ...(await facts.get(name)), ...change };
    await facts.put(changed, name);
    return changed;
  });
}

/** Changes what is noted of a session under way. */
export function changePin(
  storage: Storage,
  session: string,
  change: (pin: Pin) => Pin,
): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const pins = transaction.objectStore("pins");
    const pin = await pins.get(session);
    if (pin) await pins.put(change(pin));
  });
}

/**
 * Takes a new pairing. What this athlete has not sent yet is taken over with the first snapshot; what
 * another athlete has not sent stays, is never sent in this one's name, and waits for its own.
 */
export function pairWith(storage: Storage, pairing: Paired): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const before = await identityIn(transaction);
    if (before?.device === pairing.device && !before.refused) return;
    if (before && before.athlete.id !== pairing.athlete.id) await forgetPlans(transaction);
    const { device, athlete, coach, epoch, cursor } = pairing;
    const lastN = before?.device === device ? before.lastN : 0;
    await transaction
      .objectStore("facts")
      .put(
        { device, athlete, coach, epoch, cursor, lastN, storedThrough: 0, snapshotDue: true },
        "identity",
      );
  });
}

async function forgetPlans(transaction: Transaction<"readwrite">): Promise<void> {
  // Among the settings are answers that only their athlete may see.
  await transaction.objectStore("facts").delete("settings");
  await transaction.objectStore("feed").clear();
  await transaction.objectStore("pins").clear();
  await transaction.objectStore("trend").clear();
  const entries = transaction.objectStore("entries");
  for (const kept of await entries.getAll()) if (!kept.outbox) await entries.delete(kept.id);
}

/** Leaves nothing behind. The caller has warned of what is unsent. */
export function wipe(storage: Storage): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const names = Array.from(transaction.objectStoreNames);
    await Promise.all(names.map((name) => transaction.objectStore(name).clear()));
  });
}
