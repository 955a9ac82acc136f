/** The browser's own offer to install the app, kept until the athlete wants it. */
import { type ReadonlySignal, signal } from "@preact/signals";

interface InstallEvent extends Event {
  prompt(): Promise<unknown>;
}

export interface Install {
  /** Null where the browser offers nothing, or it is installed. */
  readonly offer: ReadonlySignal<(() => void) | null>;
}

export function watchForInstall(page: Window): Install {
  const offer = signal<(() => void) | null>(null);
  page.addEventListener("beforeinstallprompt", (event) => {
    // Else it offers at once, in the middle of whatever is being done.
    event.preventDefault();
    offer.value = () => {
      offer.value = null;
      void (event as InstallEvent).prompt();
    };
  });
  page.addEventListener("appinstalled", () => {
    offer.value = null;
  });
  return { offer };
}

export function isInstalled(page: Window): boolean {
  const apple = (page.navigator as Navigator & { readonly standalone?: boolean }).standalone;
  return apple === true || page.matchMedia("(display-mode: standalone)").matches;
}
