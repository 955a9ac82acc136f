/** Ties the phone's core to this browser. */
import { get, post } from "../../api/client";
import { deviceClock, deviceTimers } from "../../offline/clock";
import { createPhone, type Phone } from "../../offline/phone";
import type { Count } from "../../offline/steady";
import { forgetPictures } from "../../offline/picture-cache";
import { openStorage } from "../../offline/storage";

const CHANNEL = "undercroft";
const LOCK = "undercroft-sync";

export function createDevicePhone(): Phone {
  const storage = openStorage({ makeRoom: forgetPictures });
  const channel = "BroadcastChannel" in window ? new BroadcastChannel(CHANNEL) : null;
  const phone = createPhone({
    storage,
    ask: { get, post },
    clock: deviceClock,
    count,
    timers: deviceTimers,
    random: Math.random,
    alone,
    tell: () => channel?.postMessage("changed"),
    persist,
    forgetPictures,
  });
  channel?.addEventListener("message", () => void phone.load());
  listen(phone, () => storage.close());
  return phone;
}

const count: Count = {
  ms: () => performance.now(),
  away: () => document.visibilityState !== "visible",
};

function listen(phone: Phone, close: () => void): void {
  document.addEventListener("visibilitychange", () => {
    const visible = document.visibilityState === "visible";
    // What happened in view is told from what happens out of it.
    phone.times();
    phone.watch(visible);
    if (!visible) {
      if (phone.state().entries.some(({ outbox }) => outbox)) void askForBackgroundSync();
      // A mobile browser may kill what a hidden page leaves open.
      void phone.settled().then(() => document.visibilityState === "hidden" && close());
      return;
    }
    void phone.retry();
    phone.poke("visible");
  });
  window.addEventListener("online", () => phone.poke("online"));
  navigator.serviceWorker?.addEventListener("message", (event: MessageEvent<unknown>) => {
    if ((event.data as { type?: string } | null)?.type === "sync") phone.poke("worker");
  });
}

/** One page at a time sends; without locks each page is its own. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (!("locks" in navigator)) return await work();
  await navigator.locks.request(LOCK, work);
}

async function persist(): Promise<boolean> {
  return (await navigator.storage?.persist?.()) ?? false;
}

/** Asks the browser to wake the worker when there is a network again, where it can do that. */
async function askForBackgroundSync(): Promise<void> {
  const ready = (await navigator.serviceWorker?.ready) as WithSync | undefined;
  await ready?.sync?.register("outbox").catch(() => undefined);
}

interface WithSync extends ServiceWorkerRegistration {
  readonly sync?: { register(tag: string): Promise<void> };
}
