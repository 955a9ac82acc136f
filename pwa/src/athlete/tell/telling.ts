/** What the athlete tells outside of a session: told again on the same day, it is a correction. */
import { useMemo } from "preact/hooks";

import { type Bodies, draft, is, type Kind, type Of } from "../../offline/entry";
import { heads } from "../../offline/heads";
import { placed } from "../../offline/ledger-view";
import type { PhoneState } from "../../offline/phone";
import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { isoDay } from "../words/times";

interface Telling<K extends Kind> {
  /** What counts today. */
  readonly today: Of<K> | null;
  /** What was told last, on whichever day. */
  readonly last: Of<K> | null;
  /** Resolves once it is on this phone; to false where the storage has failed. */
  readonly tell: (body: Bodies[K]) => Promise<boolean>;
}

export function useTelling<K extends Kind>(kind: K): Telling<K> {
  const { phone, clock } = useApp();
  const told = toldOf(usePhoneState(), kind);
  const last = told.at(-1) ?? null;
  const today = last && isoDay(Date.parse(last.at)) === isoDay(clock.now()) ? last : null;
  const id = useMemo(() => phone.newId(), [phone, last?.id]);
  return {
    today,
    last,
    tell: (body) => phone.record(draft(id, clock.now(), kind, body, { replaces: today?.id })),
  };
}

/** Of one kind, without what was corrected, in the order in which it was told. */
function toldOf<K extends Kind>(state: PhoneState, kind: K): Of<K>[] {
  return heads(entriesOf(state, kind));
}

/** Of one kind, corrected or not. */
export function entriesOf<K extends Kind>(state: PhoneState, kind: K): Of<K>[] {
  const entries = placed(state).map(({ entry }) => entry);
  return entries.filter((entry) => is(entry, kind));
}
