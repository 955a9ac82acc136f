/** What the phone keeps of the ledger: giving numbers, the outbox, verdicts. */
import type { VerdictFor } from "../api/sync";
import type { LoadSheet } from "../api/types";
import { DAY_MS } from "./clock";
import type { Identity, Kept, Pin, Transaction } from "./database";
import type { Draft } from "./entry";
import type { Storage } from "./storage";

const KEPT_DAYS = 30;

/** Nobody is paired here, so nobody's ledger can be written. */
export class NotPaired extends Error {
  override readonly name = "NotPaired";
}

/** What a tap has made. */
export interface Told {
  readonly draft: Draft;
  /** The sheet that a session begins with, to be pinned together with its first entry. */
  readonly begins?: LoadSheet;
  readonly jumpedMs?: number;
}

/**
 * Gives the draft the next number and stores it; the sheet that a session begins with is pinned in
 * the same transaction. A draft that is stored already is left as it is.
 */
export function append(storage: Storage, { draft, begins, jumpedMs }: Told): Promise<Kept> {
  return storage.run("readwrite", async (transaction) => {
    const entries = transaction.objectStore("entries");
    const [before, identity] = await Promise.all([entries.get(draft.id), identityIn(transaction)]);
    if (before) return before;
    if (!identity) throw new NotPaired("this phone is not paired");
    const n = identity.lastN + 1;
    const { device } = identity;
    const kept: Kept = {
      id: draft.id,
      athlete: identity.athlete.id,
      device,
      n,
      entry: { ...draft, n },
      ...(jumpedMs && { jumpedMs }),
      outbox: device,
    };
    const stored = Promise.all([
      entries.add(kept),
      transaction.objectStore("facts").put({ ...identity, lastN: n }, "identity"),
      ...(begins ? [transaction.objectStore("pins").put(pinOf(begins, kept))] : []),
    ]);
    // Without this the storage waits for the page to hear of each write, and the page may be drawing.
    transaction.commit();
    await stored;
    return kept;
  });
}

/** The sheet as the session began with it. */
export function pinOf(sheet: LoadSheet, { n, device, entry, jumpedMs }: Kept): Pin {
  const startedAt = Date.parse(entry.at);
  const jumped = jumpedMs && { jumpedMs };
  return { session: sheet.session, sheet, startedAt, ...jumped, n, device, ramp: {} };
}

/** Entries of this device that have no verdict, lowest number first, without those to be left out. */
export function waiting(
  storage: Storage,
  device: string,
  most: number,
  leftOut: ReadonlySet<string> = new Set(),
): Promise<Kept[]> {
  return storage.run("readonly", async (transaction) => {
    const index = transaction.objectStore("entries").index("outbox");
    const found = await index.getAll(allOf(device), most + leftOut.size);
    return found.filter((kept) => !leftOut.has(kept.id)).slice(0, most);
  });
}

/** Takes what has a verdict out of the outbox; returns how many that were. */
export async function settle(
  transaction: Transaction<"readwrite">,
  verdicts: readonly VerdictFor[],
  serverNow: number,
): Promise<number> {
  const entries = transaction.objectStore("entries");
  let settled = 0;
  for (const { id, status, position, problem } of verdicts) {
    const kept = id === null ? undefined : await entries.get(id);
    if (!id || !kept?.outbox) continue;
    await entries.put({
      ...written(kept),
      verdict: status,
      verdictAt: serverNow,
      ...(typeof position === "number" && { position }),
      ...(problem && { problem }),
    });
    settled += 1;
  }
  return settled;
}

/** As it was recorded, without what became of it. */
function written({ id, athlete, device, n, entry, jumpedMs }: Kept): Kept {
  return { id, athlete, device, n, entry, ...(jumpedMs && { jumpedMs }) };
}

/** Puts entries of this device above that number back into the outbox: the server lost them. */
export async function sendAgain(
  transaction: Transaction<"readwrite">,
  device: string,
  above: number,
): Promise<number> {
  const entries = transaction.objectStore("entries");
  const lost = await entries
    .index("number")
    .getAll(IDBKeyRange.bound([device, above], [device, Infinity], true));
  const gone = lost.filter((kept) => !kept.outbox);
  for (const kept of gone) await entries.put({ ...written(kept), outbox: device });
  return gone.length;
}

/**
 * Takes over what this athlete has not sent under an earlier device id. What the server shows to have
 * is stored; the rest gets numbers of this device. Returns the last number given.
 */
export async function adopt(
  transaction: Transaction<"readwrite">,
  { device, athlete, lastN }: Identity,
  stored: ReadonlyMap<string, number>,
  serverNow: number,
): Promise<number> {
  const entries = transaction.objectStore("entries");
  const unsent = (await entries.getAll())
    .filter((kept) => kept.outbox && kept.device !== device && kept.athlete === athlete.id)
    .sort((one, other) => one.n - other.n);
  const there = unsent.filter((kept) => stored.has(kept.id));
  const verdicts = there.map(({ id }): VerdictFor => {
    return { id, status: "duplicate", position: stored.get(id) ?? null };
  });
  await settle(transaction, verdicts, serverNow);
  let n = lastN;
  for (const kept of unsent.filter(({ id }) => !stored.has(id))) {
    n += 1;
    await entries.put({ ...kept, device, n, entry: { ...kept.entry, n }, outbox: device });
  }
  return n;
}

/** Forgets entries whose verdict is older than 30 days by the server's clock. */
export async function forgetOld(
  transaction: Transaction<"readwrite">,
  serverNow: number,
): Promise<void> {
  const entries = transaction.objectStore("entries");
  const before = serverNow - KEPT_DAYS * DAY_MS;
  const kept = await entries.getAll();
  const old = kept.filter((each) => !each.outbox && (each.verdictAt ?? serverNow) < before);
  const gone = new Set(old.map((each) => each.id));
  for (const id of gone) await entries.delete(id);
  const sessions = new Set(kept.filter((k) => !gone.has(k.id)).map((k) => k.entry.session));
  const pins = transaction.objectStore("pins");
  for (const { session } of await pins.getAll()) {
    if (!sessions.has(session)) await pins.delete(session);
  }
}

export async function identityIn(transaction: Transaction<"readonly" | "readwrite">) {
  const found = await transaction.objectStore("facts").get("identity");
  return found && "device" in found ? found : null;
}

function allOf(device: string): IDBKeyRange {
  return IDBKeyRange.bound([device, 0], [device, Infinity]);
}
