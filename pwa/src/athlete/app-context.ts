import type { ReadonlySignal, Signal } from "@preact/signals";
import { createContext } from "preact";
import { useContext } from "preact/hooks";

import type { Clock } from "../offline/clock";
import type { Side } from "../offline/entry";
import type { Session } from "../offline/ledger-view";
import type { Phone, PhoneState } from "../offline/phone";
import type { Alarm } from "./device/alarm";
import type { Install } from "./device/install";
import type { Update } from "./device/update";
import type { Router } from "./router";

export interface Correcting {
  readonly exercise: string;
  readonly set: string;
  /** Where left and right were told apart. */
  readonly side: Side | null;
}

/** Where in a session the athlete wants to be, when it is not simply the next step. */
export interface Focus {
  /** The exercise that goes first. */
  readonly exercise: string | null;
  readonly correcting: Correcting | null;
}

/** What every screen works with. */
export interface App {
  readonly phone: Phone;
  readonly state: ReadonlySignal<PhoneState>;
  /** Sessions begun on this phone, in the order in which they began. */
  readonly sessions: ReadonlySignal<readonly Session[]>;
  readonly clock: Clock;
  readonly router: Router;
  readonly alarm: Alarm;
  readonly update: Update;
  readonly install: Install;
  readonly focus: Signal<Focus>;
  /** The secret of the invitation that was opened, until it is looked at. */
  readonly secret: Signal<string | null>;
  /** A word over the whole screen for a moment. */
  readonly flash: Signal<string | null>;
}

export const AppContext = createContext<App | null>(null);

export function useApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new Error("a screen was drawn outside of the app");
  return app;
}
