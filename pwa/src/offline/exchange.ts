/** One round with the server: send what waits, take what comes, until neither side has more. */
import { NoAnswer, Refused } from "../api/client";
import type { Snapshot, SyncAnswer, SyncRequest } from "../api/sync";
import type { Clock } from "./clock";
import type { Identity, Kept } from "./database";
import { markRefused, takeAnswer, takeSnapshot } from "./feed-store";
import { waiting } from "./ledger-store";
import { readIdentity } from "./phone-store";
import { type Storage, StorageFailed } from "./storage";

export const MOST_ENTRIES = 500;
/** The server takes 256 kB inflated; the rest of the message needs little. */
export const MOST_CHARACTERS = 240_000;

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
  /** Something on the phone has changed by an answer. */
  readonly onTaken: () => void;
}

const DEFAULT_BUSY_MS = 30_000;

export async function exchange(parts: ExchangeParts): Promise<Outcome> {
  try {
    return await rounds(parts);
  } catch (fault) {
    if (fault instanceof NoAnswer) return { is: "failed", why: "no answer" };
    if (fault instanceof StorageFailed) return { is: "failed", why: "storage" };
    if (fault instanceof Refused) return await refusal(parts, fault);
    throw fault;
  }
}

/** `most` shrinks where the server finds a batch too large or cannot take it as a whole. */
async function rounds(parts: ExchangeParts): Promise<Outcome> {
  const aside = new Set<string>();
  let most = MOST_ENTRIES;
  for (;;) {
    const identity = await readIdentity(parts.storage);
    if (!identity) return { is: "unpaired" };
    if (identity.snapshotDue) {
      await snapshot(parts, identity);
      continue;
    }
    const batch = fitting(await waiting(parts.storage, identity.device, most, aside));
    const answered = await send(parts, identity, batch);
    if (answered === "too much") {
      if (batch.length === 1 && batch[0]) aside.add(batch[0].id);
      most = Math.max(1, Math.ceil(batch.length / 2));
      continue;
    }
    most = Math.min(MOST_ENTRIES, most * 2);
    if (answered === "stuck") return { is: "failed", why: "not taken" };
    if (answered === "all said") {
      return aside.size > 0 ? { is: "failed", why: "not taken" } : { is: "done" };
    }
  }
}

async function snapshot(parts: ExchangeParts, { device }: Identity): Promise<void> {
  const found = await parts.ask.get<Snapshot>("/snapshot");
  await takeSnapshot(parts.storage, device, found, parts.clock.now());
  parts.onTaken();
}

async function send(
  parts: ExchangeParts,
  identity: Identity,
  batch: readonly Kept[],
): Promise<"more" | "all said" | "stuck" | "too much"> {
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
  parts.onTaken();
  if (taken.newEpoch) return "more";
  const forward = taken.settled > 0 || taken.moved;
  if (batch.length > 0 || answer.more || taken.again > 0) return forward ? "more" : "stuck";
  return "all said";
}

/** No status takes an entry out of the outbox; these say that the batch as it is cannot be read. */
const HALVED: ReadonlySet<number> = new Set([400, 409, 413, 422]);

async function refusal(parts: ExchangeParts, refused: Refused): Promise<Outcome> {
  const { status, retryAfterS } = refused;
  if (status === 401 || status === 403) {
    const identity = await readIdentity(parts.storage);
    if (identity) await markRefused(parts.storage, identity.device);
    parts.onTaken();
    return { is: "refused" };
  }
  if (status === 429 || status === 503) {
    return { is: "busy", waitMs: retryAfterS === null ? DEFAULT_BUSY_MS : retryAfterS * 1000 };
  }
  return { is: "failed", why: "not taken" };
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
