/**
 * The service worker. It keeps the phone's whole app from the first visit on and answers for it
 * without a network; what the app says to the server goes past it. A new worker waits until a page
 * sends `{ type: "update-now" }`, so that no session is interrupted.
 */
import { createHandlerBoundToURL, precacheAndRoute, type PrecacheEntry } from "workbox-precaching";
import { createPartialResponse } from "workbox-range-requests";
import { NavigationRoute, registerRoute } from "workbox-routing";
import { CacheFirst } from "workbox-strategies";

import { PICTURE_PATH, PICTURES } from "./offline/picture-cache";

declare const self: ServiceWorkerGlobalScope;
declare const PHONE_FILES: PrecacheEntry[];
declare const DESK_FILES: string[];
declare global {
  interface ServiceWorkerGlobalScopeEventMap {
    sync: ExtendableEvent & { readonly tag: string };
  }
}

const DESK_CACHE = "desk";
const DESK_PATIENCE_MS = 5_000;

precacheAndRoute(PHONE_FILES, { cleanURLs: false, directoryIndex: "" });
const keptIndex = createHandlerBoundToURL("/");

// The desk needs the server anyway, so it takes the newest index, whose scripts the server still has.
registerRoute(new NavigationRoute(newestIndex, { allowlist: [/^\/desk(\/|$)/] }));
// A shared invitation holds its secret in the query, so it must never come to the server's log.
registerRoute(new NavigationRoute(keptIndex, { allowlist: [/^\/pair(\?|$)/] }));
registerRoute(new NavigationRoute(keptIndex, { denylist: [/^\/api\//, /\.[^/]+$/] }));
registerRoute(isDeskFile, new CacheFirst({ cacheName: DESK_CACHE }));
registerRoute(isPicture, keptPicture);

self.addEventListener("activate", (event) => {
  event.waitUntil(Promise.all([self.clients.claim(), forgetOldDeskFiles()]));
});

self.addEventListener("message", (event) => {
  if (event.data?.type === "update-now") event.waitUntil(self.skipWaiting());
});

self.addEventListener("sync", (event) => {
  if (event.tag === "outbox") event.waitUntil(askPagesToSync());
});

async function newestIndex(options: Parameters<typeof keptIndex>[0]): Promise<Response> {
  try {
    const signal = AbortSignal.timeout(DESK_PATIENCE_MS);
    const response = await fetch(options.request, { signal });
    if (response.ok) return response;
  } catch {
    // No answer: the index that came with this worker will do.
  }
  return keptIndex(options);
}

function isDeskFile({ url, sameOrigin }: { url: URL; sameOrigin: boolean }): boolean {
  return sameOrigin && url.pathname.startsWith("/assets/");
}

function isPicture({ url, sameOrigin }: { url: URL; sameOrigin: boolean }): boolean {
  return sameOrigin && url.pathname.startsWith(PICTURE_PATH);
}

/** From what the page has kept, in parts where the browser asks for a clip's; else from the server. */
async function keptPicture({ request }: { request: Request }): Promise<Response> {
  const kept = await caches.match(request.url, { cacheName: PICTURES, ignoreVary: true });
  if (!kept) return fetch(request);
  return request.headers.has("range") ? createPartialResponse(request, kept) : kept;
}

async function forgetOldDeskFiles(): Promise<void> {
  const cache = await caches.open(DESK_CACHE);
  const old = (await cache.keys()).filter(({ url }) => !DESK_FILES.includes(new URL(url).pathname));
  await Promise.all(old.map((request) => cache.delete(request)));
}

async function askPagesToSync(): Promise<void> {
  const pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  for (const page of pages) page.postMessage({ type: "sync" });
}
