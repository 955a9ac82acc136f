/** One round with the server: send what waits, take what comes, until neither side has more. */
import { NoAnswer, Refused } from "../api/client";
import type { DeviceRenewed, Snapshot, SyncAnswer, SyncRequest } from "../api/sync";
import type { Clock } from "./clock";
import type { Identity, Kept } from "./database";
import { markRefused, markSnapshotDue, takeAnswer, takeRenewal, takeSnapshot } from "./feed-store";
import { waiting } from "./ledger-store";
import { readIdentity } from "./phone-store";
import { type Storage, StorageFailed } from "./storage";

const MOST_ENTRIES = 500;
/** The server takes 256 kB inflated; the rest of the message needs little. */
const MOST_CHARACTERS = 240_000;

/** What the exchange asks with; `client.ts` outside of tests. */
export interface Ask {
  get<T>(path: string): Promise<T>;
  post<T>(path: string, body: unknown, options?: { readonly zip?: boolean }): Promise<T>;
}

export type Outcome =
  | { readonly is: "done" }
  /** Nobody is paired on this phone. */
  | { readonly is: "unpaired" }
  /** The server refuses this device; everything is kept. */
  | { readonly is: "refused" }
  /** The server asks to be left alone for a while. */
  | { readonly is: "busy"; readonly waitMs: number }
  | { readonly is: "failed"; readonly why: "no answer" | "not taken" | "storage" };

export interface ExchangeParts {
  readonly storage: Storage;
  readonly ask: Ask;
  readonly clock: Clock;
  /** Something on the phone has changed by an answer; the round is over once the screens know of it. */
  readonly onTaken: () => Promise<void>;
}

const DEFAULT_BUSY_MS = 30_000;

export async function exchange(parts: ExchangeParts): Promise<Outcome> {
  try {
    try {
      return await rounds(parts);
    } catch (fault) {
      if (!(await mayBeRenamed(parts, fault))) throw fault;
      return await rounds(parts);
    }
  } catch (fault) {
    if (fault instanceof NoAnswer) return { is: "failed", why: "no answer" };
    if (fault instanceof Refused) return await refusal(parts, fault).catch(storageFault);
    return storageFault(fault);
  }
}

function storageFault(fault: unknown): Outcome {
  if (fault instanceof StorageFailed) return { is: "failed", why: "storage" };
  throw fault;
}

/**
 * The server may know this phone by a newer device id, because the answer that told so was lost. It
 * then forbids what comes in the old one's name, and a snapshot finds out.
 */
async function mayBeRenamed({ storage }: ExchangeParts, fault: unknown): Promise<boolean> {
  if (!(fault instanceof Refused) || fault.status !== 403) return false;
  const identity = await readIdentity(storage);
  if (identity) await markSnapshotDue(storage, identity.device);
  return identity !== null;
}

/**
 * `most` shrinks where the server finds a batch too large or cannot take it as a whole; an entry that
 * alone cannot be taken is set aside and stays in the outbox. `owed`: the server has more to say.
 */
async function rounds(parts: ExchangeParts): Promise<Outcome> {
  const aside = new Set<string>();
  let most = MOST_ENTRIES;
  let owed = true;
  let revoked = false;
  for (;;) {
    const identity = await readIdentity(parts.storage);
    if (!identity) return { is: "unpaired" };
    if (identity.renewDue || identity.snapshotDue) {
      if (!(await comeToTerms(parts, identity))) return await refuse(parts, identity);
      continue;
    }
    const batch = fitting(await waiting(parts.storage, identity.device, most, aside));
    if (batch.length === 0 && !owed) break;
    const sent = await send(parts, identity, batch);
    if (sent === "too much") {
      if (batch.length === 1 && batch[0]) aside.add(batch[0].id);
      most = Math.max(1, Math.ceil(batch.length / 2));
      continue;
    }
    if (!sent.forward && (batch.length > 0 || sent.owed)) return { is: "failed", why: "not taken" };
    most = Math.min(MOST_ENTRIES, most * 2);
    ({ owed, revoked } = sent);
  }
  if (revoked) return { is: "refused" };
  return aside.size > 0 ? { is: "failed", why: "not taken" } : { is: "done" };
}

/** A new device id or a snapshot; false where this phone turns out to be another athlete's. */
async function comeToTerms(parts: ExchangeParts, identity: Identity): Promise<boolean> {
  if (identity.renewDue) {
    const renewed = await parts.ask.post<DeviceRenewed>("/device/renew", {});
    await takeRenewal(parts.storage, identity.device, renewed);
    return true;
  }
  const pages = await wholeSnapshot(parts.ask);
  if (pages[0].athlete.id !== identity.athlete.id) return false;
  await takeSnapshot(parts.storage, identity.athlete.id, pages, parts.clock.now());
  await parts.onTaken();
  return true;
}

async function wholeSnapshot(ask: Ask): Promise<[Snapshot, ...Snapshot[]]> {
  const pages: [Snapshot, ...Snapshot[]] = [await ask.get<Snapshot>("/snapshot?after=0")];
  for (let last: Snapshot | undefined = pages[0]; last?.more; last = pages.at(-1)) {
    pages.push(await ask.get<Snapshot>(`/snapshot?after=${last.cursor}`));
  }
  return pages;
}

interface Sent {
  /** Something was settled or read, so that the next round is another one. */
  readonly forward: boolean;
  readonly owed: boolean;
  readonly revoked: boolean;
}

async function send(
  parts: ExchangeParts,
  identity: Identity,
  batch: readonly Kept[],
): Promise<Sent | "too much"> {
  const { device, epoch, cursor } = identity;
  const request: SyncRequest = { device, epoch, cursor, entries: batch.map((kept) => kept.entry) };
  let answer: SyncAnswer;
  try {
    answer = await parts.ask.post<SyncAnswer>("/sync", request, { zip: true });
  } catch (fault) {
    if (batch.length > 0 && fault instanceof Refused && HALVED.has(fault.status)) return "too much";
    throw fault;
  }
  const taken = await takeAnswer(parts.storage, request, answer, parts.clock.now());
  await parts.onTaken();
  return {
    forward: taken.settled > 0 || taken.moved,
    owed: (answer.more ?? false) || taken.due,
    revoked: answer.revoked ?? false,
  };
}

/** No status takes an entry out of the outbox; these say that the batch as it is cannot be read. */
const HALVED: ReadonlySet<number> = new Set([400, 409, 413, 422]);

async function refusal(parts: ExchangeParts, fault: Refused): Promise<Outcome> {
  const { status, retryAfterS } = fault;
  const identity = await readIdentity(parts.storage);
  if (identity && (status === 401 || status === 403)) {
    return await refuse(parts, identity, fault.problem.type === ERASED);
  }
  if (status === 429 || status === 503) {
    return { is: "busy", waitMs: retryAfterS === null ? DEFAULT_BUSY_MS : retryAfterS * 1000 };
  }
  return { is: "failed", why: "not taken" };
}

/** The server has erased the athlete; what is on the phone stays. */
const ERASED = "urn:undercroft:problem:erased";

async function refuse(parts: ExchangeParts, identity: Identity, erased = false): Promise<Outcome> {
  await markRefused(parts.storage, identity.device, erased);
  await parts.onTaken();
  return { is: "refused" };
}

/** As many of the first entries as the server takes at once; always at least one where there is one. */
export function fitting(kept: readonly Kept[], most = MOST_CHARACTERS): Kept[] {
  let room = most;
  const batch: Kept[] = [];
  for (const each of kept) {
    room -= JSON.stringify(each.entry).length + 1;
    if (room < 0 && batch.length > 0) break;
    batch.push(each);
  }
  return batch;
}
