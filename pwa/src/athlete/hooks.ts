/** Parts of the phone's state, as the screens ask for them. */
import type { AthleteNews, News } from "../api/sync";
import type { Kit } from "../api/types";
import type { Session } from "../offline/ledger-view";
import { underWay } from "../offline/ledger-view";
import type { PhoneState } from "../offline/phone";
import { useApp } from "./app-context";
import type { Units } from "./words/mass";

export function usePhoneState(): PhoneState {
  return useApp().state.value;
}

/** What the feed last said of a kind, oldest first. */
export function newsOf<K extends keyof News>(state: Pick<PhoneState, "feed">, kind: K): News[K][] {
  return state.feed
    .filter((item) => item.kind === kind)
    .sort((one, other) => one.position - other.position)
    .map((item) => item.body as News[K]);
}

export function useUnits(): Units {
  const state = usePhoneState();
  const athlete: AthleteNews | undefined = newsOf(state, "athlete").at(-1);
  return { pounds: state.settings.pounds ?? athlete?.pounds ?? false };
}

interface KitFacts {
  /** Thickness of a plate in m by its mass in kg. */
  readonly thickness: ReadonlyMap<number, number>;
  /** Pins in kg by the key of the stack. */
  readonly stacks: ReadonlyMap<string, readonly number[]>;
}

export function useKit(): KitFacts {
  const kit: Kit | undefined = newsOf(usePhoneState(), "kit").at(-1);
  return {
    thickness: new Map((kit?.plates ?? []).map((plate) => [plate.mass_kg, plate.thickness_m])),
    stacks: new Map((kit?.stacks ?? []).map((stack) => [stack.key, stack.pins_kg])),
  };
}

/** The session under way and those that were begun before it. */
export function useUnderWay(): {
  readonly session: Session;
  readonly earlier: readonly Session[];
} | null {
  const begun = useApp().sessions.value;
  const session = underWay(begun);
  return session && { session, earlier: begun.slice(0, -1) };
}
