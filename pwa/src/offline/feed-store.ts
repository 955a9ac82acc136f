/** What the phone keeps of the feed: the newest of each kind and key. */
import type { FeedItem, Snapshot, SyncAnswer, SyncRequest, TrackerNews } from "../api/sync";
import type { Identity, Transaction } from "./database";
import { forgetOld, identityIn, sendAgain, settle } from "./ledger-store";
import type { Storage } from "./storage";

export interface Taken {
  /** Entries that left the outbox. */
  readonly settled: number;
  /** Entries that came back into it, because the server no longer has them. */
  readonly again: number;
  /** The feed went forward. */
  readonly moved: boolean;
  /** The server's database has a new life. */
  readonly newEpoch: boolean;
}

/**
 * Takes an answer in, in one transaction. Verdicts count whatever else has changed meanwhile; the
 * feed only counts where it continues what is here.
 */
export function takeAnswer(
  storage: Storage,
  asked: SyncRequest,
  answer: SyncAnswer,
  now: number,
): Promise<Taken> {
  return storage.run("readwrite", async (transaction) => {
    const serverNow = milliseconds(answer.server_time);
    const settled = await settle(transaction, answer.verdicts, serverNow);
    await note(transaction, now, serverNow, settled > 0);
    const identity = await identityIn(transaction);
    if (identity?.device !== asked.device) return taken({ settled });
    if (answer.epoch !== identity.epoch) {
      await save(transaction, { ...identity, snapshotDue: true });
      return taken({ settled, newEpoch: true });
    }
    const lost = answer.stored_through < identity.storedThrough;
    const again = lost ? await sendAgain(transaction, asked.device, answer.stored_through) : 0;
    const moved = identity.cursor === asked.cursor && answer.cursor !== asked.cursor;
    if (moved) await keep(transaction, answer.feed);
    await save(transaction, {
      ...identity,
      refused: false,
      storedThrough: answer.stored_through,
      cursor: moved ? answer.cursor : identity.cursor,
    });
    await forgetOld(transaction, serverNow);
    return taken({ settled, again, moved });
  });
}

/** Replaces the feed as a whole and puts into the outbox what this server has not stored. */
export function takeSnapshot(
  storage: Storage,
  device: string,
  snapshot: Snapshot,
  now: number,
): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const identity = await identityIn(transaction);
    if (identity?.device !== device) return;
    await note(transaction, now, milliseconds(snapshot.server_time), false);
    await transaction.objectStore("feed").clear();
    await keep(transaction, snapshot.feed);
    await sendAgain(transaction, device, snapshot.stored_through);
    const { epoch, cursor, stored_through: storedThrough } = snapshot;
    await save(transaction, {
      ...identity,
      epoch,
      cursor,
      storedThrough,
      snapshotDue: false,
      refused: false,
    });
  });
}

/** The server refuses this device; nothing is thrown away. */
export function markRefused(storage: Storage, device: string): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const identity = await identityIn(transaction);
    if (identity?.device === device) await save(transaction, { ...identity, refused: true });
  });
}

async function keep(
  transaction: Transaction<"readwrite">,
  items: readonly FeedItem[],
): Promise<void> {
  const feed = transaction.objectStore("feed");
  for (const item of items) {
    if (item.kind === "sheet.withdrawn") await feed.delete(["sheet", item.key]);
    else if (!(await isOwn(transaction, item))) await feed.put(item);
    if (item.kind === "tracker") await plot(transaction, item.body as TrackerNews);
  }
}

/** An entry that this phone wrote itself, under this pairing or an earlier one. */
async function isOwn(transaction: Transaction<"readwrite">, item: FeedItem): Promise<boolean> {
  if (item.kind !== "entry") return false;
  const { id } = item.body as { id: string };
  return (await transaction.objectStore("entries").getKey(id)) !== undefined;
}

async function plot(transaction: Transaction<"readwrite">, news: TrackerNews): Promise<void> {
  const { lift, at, kg, low_kg, high_kg } = news;
  await transaction.objectStore("trend").put({ lift, at, kg, low_kg, high_kg });
}

async function note(
  transaction: Transaction<"readwrite">,
  now: number,
  serverNow: number,
  sent: boolean,
): Promise<void> {
  const facts = transaction.objectStore("facts");
  const before = await facts.get("notes");
  const clockOff = serverNow - now;
  await facts.put(
    { ...before, lastAnswerAt: now, clockOff, ...(sent && { lastSentAt: now }) },
    "notes",
  );
}

async function save(transaction: Transaction<"readwrite">, identity: Identity): Promise<void> {
  await transaction.objectStore("facts").put(identity, "identity");
}

function taken(part: Partial<Taken>): Taken {
  return { settled: 0, again: 0, moved: false, newEpoch: false, ...part };
}

function milliseconds(time: number | string): number {
  return typeof time === "number" ? time : Date.parse(time);
}
