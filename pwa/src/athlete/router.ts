/** Which screen is shown: the path of the address, so that back and reload do what they should. */
import { type ReadonlySignal, signal } from "@preact/signals";

export const PLACES = [
  "/",
  "/set",
  "/sets",
  "/swap",
  "/finish",
  "/stop",
  "/back",
  "/sync",
  "/tell",
  "/kit",
  "/pair",
  "/screening",
  "/after",
] as const;

export type Place = (typeof PLACES)[number];

export interface Router {
  readonly place: ReadonlySignal<Place>;
  readonly go: (place: Place) => void;
  /** Goes there in place of where the athlete is, so that back does not return. */
  readonly replace: (place: Place) => void;
}

export function createRouter(page: Window): Router {
  const place = signal<Place>(placeOf(page.location.pathname));
  page.addEventListener("popstate", () => {
    place.value = placeOf(page.location.pathname);
  });

  function move(to: Place, how: "pushState" | "replaceState"): void {
    if (to === place.value && page.location.pathname === to) return;
    page.history[how](null, "", to);
    place.value = to;
    page.scrollTo(0, 0);
  }

  return { place, go: (to) => move(to, "pushState"), replace: (to) => move(to, "replaceState") };
}

function placeOf(path: string): Place {
  return PLACES.find((place) => place === path) ?? "/";
}
