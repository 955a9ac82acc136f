/** A newer app waits until no session is under way and the athlete says so. */
import { type ReadonlySignal, signal } from "@preact/signals";

export interface Update {
  readonly waiting: ReadonlySignal<boolean>;
  readonly useNow: () => void;
}

export function watchForUpdate(): Update {
  const waiting = signal(false);
  let worker: ServiceWorker | null = null;
  const found = (candidate: ServiceWorker | null) => {
    if (!candidate || !navigator.serviceWorker.controller) return;
    worker = candidate;
    waiting.value = true;
  };
  async function watch(): Promise<void> {
    const registration = await navigator.serviceWorker?.ready;
    found(registration?.waiting ?? null);
    registration?.addEventListener("updatefound", () => {
      const coming = registration.installing;
      coming?.addEventListener("statechange", () => {
        if (coming.state === "installed") found(registration.waiting);
      });
    });
  }

  void watch();

  function useNow(): void {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), {
      once: true,
    });
    worker?.postMessage({ type: "update-now" });
  }

  return { waiting, useNow };
}
