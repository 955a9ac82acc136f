/** From taps to entries. */
import { useMemo } from "preact/hooks";

import type { SheetSet } from "../../api/types";
import { draft, type SetDone, type Side } from "../../offline/entry";
import { answerKey } from "../../offline/fold";
import { revisionOf, type Session } from "../../offline/ledger-view";
import { useApp } from "../app-context";

export interface Recorder {
  /** `at`: when it was done, on the steady clock, where that was before the tap. */
  readonly done: (set: SheetSet, body: SetDone, at?: number) => void;
  readonly skip: (set: SheetSet, why: string, side?: Side | null) => void;
  readonly skipAll: (sets: readonly SheetSet[], why: string) => void;
  /** Takes back what was recorded for a set: it is open again. */
  readonly undo: (set: SheetSet, side?: Side | null) => void;
  readonly add: (exercise: string) => void;
  readonly swap: (exercise: string, to: string, missing?: Missing) => void;
}

/** What failed, by its key, and in words for the coach. */
export interface Missing {
  readonly missing?: string;
  readonly why: string;
}

/** Ids last until the next entry is there, so that two taps on one button are one entry. */
export function useRecorder(session: Session): Recorder {
  const { phone, clock, alarm, focus } = useApp();
  const { sheet, record, entries, running } = session;
  const ids = useMemo<string[]>(() => [], [entries.length]);
  const id = (place = 0) => (ids[place] ??= phone.newId());
  const place = { revision: revisionOf(sheet), session: sheet.session };

  const answer = (set: SheetSet, side: Side | null) => ({
    ...place,
    set: set.key,
    replaces: record.answers.get(answerKey(set.key, side)) ?? record.answers.get(set.key) ?? null,
  });

  function leave(key: string): void {
    if (focus.value.correcting) focus.value = { ...focus.value, correcting: null };
    if (running[key]) void phone.saveRunning(sheet.session, key, null);
  }

  function skip(set: SheetSet, why: string, side: Side | null = null, nth = 0): void {
    const body = { why, ...(side && { side }) };
    void phone.record(draft(id(nth), clock.now(), "set.skipped", body, answer(set, side)));
    leave(answerKey(set.key, side));
  }

  return {
    done(set, body, at) {
      alarm.ready();
      const { now, steady } = phone.times();
      const side = body.side ?? null;
      void phone.record(
        draft(id(), now - steady + (at ?? steady), "set.done", body, answer(set, side)),
      );
      leave(answerKey(set.key, side));
    },
    skip(set, why, side) {
      skip(set, why, side);
    },
    skipAll(sets, why) {
      for (const [nth, set] of sets.entries()) skip(set, why, null, nth);
    },
    undo(set, side = null) {
      const body = side ? { side } : {};
      void phone.record(draft(id(), clock.now(), "set.cleared", body, answer(set, side)));
      leave(answerKey(set.key, side));
    },
    add(exercise) {
      const set = `extra-${id().slice(-12)}`;
      void phone.record(draft(id(), clock.now(), "set.added", { exercise }, { ...place, set }));
    },
    swap(exercise, to, missing) {
      const body = { exercise, to, ...missing };
      void phone.record(draft(id(), clock.now(), "exercise.swapped", body, place));
    },
  };
}
