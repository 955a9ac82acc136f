/** What the phone keeps of the feed: the newest of each kind and key. */
import {
  type DeviceRenewed,
  type FeedItem,
  type Snapshot,
  type SyncAnswer,
  type SyncRequest,
  toMs,
  type TrackerNews,
} from "../api/sync";
import type { Identity, Transaction } from "./database";
import { adopt, forgetOld, identityIn, sendAgain, settle } from "./ledger-store";
import type { Storage } from "./storage";

/** By kind of what takes back, the kind that it takes back. */
const WITHDRAWS: Readonly<Record<string, string>> = {
  "sheet.withdrawn": "sheet",
  "tracker.withdrawn": "tracker",
};

export interface Taken {
  /** Entries that left the outbox. */
  readonly settled: number;
  /** The feed went forward, entries came back into the outbox, or something is due. */
  readonly moved: boolean;
  /** A snapshot or a new device id has to be asked for. */
  readonly due: boolean;
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
    const serverNow = toMs(answer.server_time);
    const settled = await settle(transaction, answer.verdicts, serverNow);
    await note(transaction, now, serverNow, settled > 0);
    const before = await identityIn(transaction);
    if (before?.device !== asked.device) return { settled, moved: false, due: false };
    const revoked = answer.revoked ?? false;
    const identity = { ...before, refused: revoked, revoked, renewDue: copied(answer) };
    const anew = answer.epoch !== before.epoch || answer.cursor < asked.cursor;
    if (anew && !answer.revoked) {
      await save(transaction, { ...identity, snapshotDue: true });
      return { settled, moved: true, due: true };
    }
    if (anew) {
      // A revoked phone gets no snapshot; what another life of the database lacks goes up all the same.
      const { epoch, stored_through: storedThrough } = answer;
      const missing = await sendAgain(transaction, asked.device, storedThrough);
      await save(transaction, { ...identity, epoch, storedThrough });
      return { settled, moved: missing > 0, due: false };
    }
    const lost = answer.stored_through < before.storedThrough;
    const again = lost ? await sendAgain(transaction, asked.device, answer.stored_through) : 0;
    const moved = before.cursor === asked.cursor && answer.cursor !== asked.cursor;
    if (moved) await keep(transaction, answer.feed);
    const cursor = moved ? answer.cursor : before.cursor;
    await save(transaction, { ...identity, storedThrough: answer.stored_through, cursor });
    await forgetOld(transaction, serverNow);
    const due = identity.renewDue;
    return { settled, moved: moved || again > 0 || due, due };
  });
}

/** Another phone with this one's memory, as after a backup was put back, has used its numbers. */
function copied(answer: SyncAnswer): boolean {
  return answer.verdicts.some(({ problem }) => problem?.code === "n-taken");
}

/**
 * Replaces the feed as a whole, takes the device id that the server knows this phone by, and puts into
 * the outbox what this server has not stored. `pages` are one snapshot, in order, at least one.
 */
export function takeSnapshot(
  storage: Storage,
  athlete: string,
  pages: readonly [Snapshot, ...Snapshot[]],
  now: number,
): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const last = pages.at(-1) ?? pages[0];
    const before = await identityIn(transaction);
    if (before?.athlete.id !== athlete || last.athlete.id !== athlete) return;
    const serverNow = toMs(last.server_time);
    await note(transaction, now, serverNow, false);
    const feed = pages.flatMap((page) => page.feed);
    const stored = new Map(feed.filter(isEntry).map((item) => [item.key, item.position]));
    await transaction.objectStore("feed").clear();
    await keep(transaction, feed);
    const { device, coach, epoch, cursor, stored_through: storedThrough } = last;
    const identity: Identity = {
      ...before,
      device,
      coach,
      epoch,
      cursor,
      storedThrough,
      athlete: last.athlete,
      lastN: device === before.device ? before.lastN : 0,
      snapshotDue: false,
      renewDue: false,
      refused: false,
      revoked: false,
      erased: false,
    };
    const lastN = await adopt(transaction, identity, stored, serverNow);
    await sendAgain(transaction, device, storedThrough);
    await save(transaction, { ...identity, lastN });
  });
}

/** Takes the new device id; what waits is taken over with the snapshot that follows. */
export function takeRenewal(storage: Storage, old: string, renewed: DeviceRenewed): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const before = await identityIn(transaction);
    if (before?.device !== old) return;
    const fresh = { lastN: 0, storedThrough: 0, snapshotDue: true, renewDue: false };
    await save(transaction, { ...before, ...fresh, device: renewed.device });
  });
}

/** Asks for a snapshot before anything else is said. */
export function markSnapshotDue(storage: Storage, device: string): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const identity = await identityIn(transaction);
    if (identity?.device === device) await save(transaction, { ...identity, snapshotDue: true });
  });
}

/** The server refuses this device; nothing is thrown away. */
export function markRefused(storage: Storage, device: string, erased: boolean): Promise<void> {
  return storage.run("readwrite", async (transaction) => {
    const identity = await identityIn(transaction);
    if (identity?.device === device)
      await save(transaction, { ...identity, refused: true, erased });
  });
}

async function keep(
  transaction: Transaction<"readwrite">,
  items: readonly FeedItem[],
): Promise<void> {
  const feed = transaction.objectStore("feed");
  for (const item of items) {
    const withdrawn = WITHDRAWS[item.kind];
    if (withdrawn) await feed.delete([withdrawn, item.key]);
    else if (!(await isOwn(transaction, item))) await feed.put(item);
    if (item.kind === "tracker") await plot(transaction, item.body as TrackerNews);
  }
}

/** An entry that this phone wrote itself and still has, under this pairing or an earlier one. */
async function isOwn(transaction: Transaction<"readwrite">, item: FeedItem): Promise<boolean> {
  if (!isEntry(item)) return false;
  return (await transaction.objectStore("entries").getKey(item.key)) !== undefined;
}

function isEntry(item: FeedItem): boolean {
  return item.kind === "entry";
}

async function plot(transaction: Transaction<"readwrite">, news: TrackerNews): Promise<void> {
  const { lift, kg, low_kg, high_kg } = news;
  const at = toMs(news.at);
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
