/** The clock within a set, kept on the phone like what was recorded: a reload finds it again. */
import type { SetDone } from "../../../offline/entry";
import { useApp } from "../../app-context";
import { useSeconds } from "../../device/now";
import type { AtHand } from "../at-hand";

export interface RunningClock {
  /** When it was started, on the steady clock; null where it stands. */
  readonly since: number | null;
  readonly parts: readonly number[];
  readonly now: number;
  readonly start: (done: SetDone, parts?: readonly number[]) => void;
  /** Stops the clock and keeps what was done so far. */
  readonly stand: (done: SetDone, parts: readonly number[]) => void;
}

export function useRunning({ view, key, answer }: AtHand): RunningClock {
  const { phone, alarm } = useApp();
  const { sheet, running } = view.session;
  const { since = null, parts = [] } = (answer ? undefined : running[key]) ?? {};
  const now = useSeconds(since);
  const save = (at: number | null, done: SetDone, told: readonly number[]) =>
    void phone.saveRunning(sheet.session, key, { since: at, parts: told, done });
  return {
    since,
    parts,
    now,
    start(done, told = parts) {
      alarm.ready();
      save(phone.times().steady, done, told);
    },
    stand(done, told) {
      save(null, done, told);
    },
  };
}
