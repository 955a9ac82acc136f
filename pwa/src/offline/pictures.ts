/**
 * Fetches pictures for coming sessions, one after the other, when nothing else is to be done. They are
 * the least of what a phone keeps: the first to wait, and the first to go.
 */
import type { PictureNews } from "../api/sync";
import { pictureAddress, PICTURES } from "./picture-cache";

/** Below this much free room nothing is fetched (our own choice: ten clips of the longest). */
export const LEAST_ROOM_BYTES = 40_000_000;

export interface PictureParts {
  readonly caches: Pick<CacheStorage, "open" | "delete" | "match">;
  readonly fetch: (address: string, init: RequestInit) => Promise<Response>;
  /** The athlete asks the browser to save data. */
  readonly saving: () => boolean;
  /** Room that the browser still grants, in bytes; Infinity where it does not say. */
  readonly room: () => Promise<number>;
}

/** `full`: there is no room, so that nothing more should be asked for. */
export type Brought = "all" | "some" | "full";

/**
 * Brings what is wanted and forgets what is known no more. `idle` is asked before each, and ends it
 * where something more important is to be done.
 */
export async function bringPictures(
  parts: PictureParts,
  wanted: readonly PictureNews[],
  known: readonly PictureNews[],
  idle: () => boolean,
): Promise<Brought> {
  const cache = await parts.caches.open(PICTURES);
  await forgetOthers(cache, known);
  for (const picture of wanted) {
    if (await cache.match(pictureAddress(picture.hash))) continue;
    if (parts.saving() || !idle()) return "some";
    if ((await parts.room()) < LEAST_ROOM_BYTES) return "full";
    const brought = await bring(parts, cache, picture);
    if (brought !== "all") return brought;
  }
  return "all";
}

/** One that the athlete has asked for. */
export async function bringOne(parts: PictureParts, picture: PictureNews): Promise<boolean> {
  const cache = await parts.caches.open(PICTURES);
  return (await bring(parts, cache, picture)) === "all";
}

export async function isHere({ caches }: Pick<PictureParts, "caches">, hash: string) {
  return (await caches.match(pictureAddress(hash), { cacheName: PICTURES })) !== undefined;
}

async function bring(parts: PictureParts, cache: Cache, { hash }: PictureNews): Promise<Brought> {
  const address = pictureAddress(hash);
  const answer = await parts.fetch(address, { priority: "low" }).catch(() => null);
  if (!answer?.ok || answer.headers.get("Undercroft") !== "1") return "some";
  try {
    await cache.put(address, answer);
    return "all";
  } catch (fault) {
    if (!isFull(fault)) return "some";
    await parts.caches.delete(PICTURES);
    return "full";
  }
}

async function forgetOthers(cache: Cache, known: readonly PictureNews[]): Promise<void> {
  const kept = new Set(known.map(({ hash }) => pictureAddress(hash)));
  for (const request of await cache.keys()) {
    if (!kept.has(new URL(request.url).pathname)) await cache.delete(request);
  }
}

function isFull(fault: unknown): boolean {
  return fault instanceof Error && fault.name === "QuotaExceededError";
}
