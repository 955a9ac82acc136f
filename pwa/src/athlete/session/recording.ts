/** From taps to entries. */
import { useMemo } from "preact/hooks";

import type { SheetSet } from "../../api/types";
import { draft, type SetDone } from "../../offline/entry";
import { revisionOf, type Session } from "../../offline/ledger-view";
import { uuid7 } from "../../offline/uuid";
import { useApp } from "../app-context";

export interface Recorder {
  readonly done: (set: SheetSet, body: SetDone) => void;
  readonly skip: (set: SheetSet, why: string) => void;
  /** Takes back what was recorded for a set: it is open again. */
  readonly undo: (set: SheetSet) => void;
  readonly add: (exercise: string) => void;
  readonly swap: (exercise: string, to: string) => void;
}

/** The id is made when the screen is drawn, so that two taps on one button are one entry. */
export function useRecorder(session: Session): Recorder {
  const { phone, clock, alarm, focus } = useApp();
  const { sheet, record, entries } = session;
  const id = useMemo(() => uuid7(clock.now()), [entries.length]);
  const place = { revision: revisionOf(sheet), session: sheet.session };
  const answer = (set: SheetSet) => ({
    ...place,
    set: set.key,
    replaces: record.answers.get(set.key) ?? null,
  });

  function leaveCorrection(): void {
    if (focus.value.correcting) focus.value = { ...focus.value, correcting: null };
  }

  return {
    done(set, body) {
      alarm.ready();
      void phone.record(draft(id, clock.now(), "set.done", body, answer(set)));
      leaveCorrection();
    },
    skip(set, why) {
      void phone.record(draft(id, clock.now(), "set.skipped", { why }, answer(set)));
      leaveCorrection();
    },
    undo(set) {
      void phone.record(draft(id, clock.now(), "set.cleared", {}, answer(set)));
      leaveCorrection();
    },
    add(exercise) {
      const set = `extra-${id.slice(-12)}`;
      void phone.record(draft(id, clock.now(), "set.added", { exercise }, { ...place, set }));
    },
    swap(exercise, to) {
      void phone.record(draft(id, clock.now(), "exercise.swapped", { exercise, to }, place));
    },
  };
}
