/** A question to the server that is asked anew a moment after each change of what it is about. */
import { useEffect, useState } from "preact/hooks";

import { ask, useDesk } from "./desk-state";

const LEAST_PAUSE_MS = 500;

export interface Asked<T> {
  readonly state: "off" | "working" | "ready" | "failed";
  /** The last answer for the same `whose`; of an older `what` while the newer one is worked out. */
  readonly answer: T | null;
  readonly fault: unknown;
}

interface Answered<T> extends Omit<Asked<T>, "state"> {
  readonly whose: string;
  readonly what: unknown;
  /** How long to wait after a change: as long as the last answer took. */
  readonly pauseMs: number;
}

/** `what` is told apart by identity; with null nothing is asked. */
export function useAfterPause<T>(
  what: object | null,
  whose: string,
  question: (signal: AbortSignal) => Promise<T>,
): Asked<T> {
  const desk = useDesk();
  const none: Answered<T> = { whose, what: null, answer: null, fault: null, pauseMs: 0 };
  const [answered, setAnswered] = useState(none);
  const logIns = desk.logIns.value;
  const answers = desk.answers.value;
  const last = answered.whose === whose ? answered : none;
  useEffect(() => {
    const failed = last.what === what && last.fault !== null;
    if (what === null || (failed && !answers)) return undefined;
    const stop = new AbortController();
    const work = async () => {
      const asked = desk.now();
      try {
        const answer = await ask(desk, () => question(stop.signal));
        const pauseMs = Math.max(LEAST_PAUSE_MS, desk.now() - asked);
        setAnswered({ whose, what, answer, fault: null, pauseMs });
      } catch (fault) {
        if (!stop.signal.aborted)
          setAnswered({ ...last, whose, what, fault, pauseMs: LEAST_PAUSE_MS });
      }
    };
    const timer = setTimeout(() => void work(), last.pauseMs);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [what, whose, logIns, answers]);
  if (what === null) return { state: "off", answer: null, fault: null };
  const current = last.what === what;
  const state = !current ? "working" : last.fault ? "failed" : "ready";
  return { state, answer: last.answer, fault: current ? last.fault : null };
}
