/** The loads that the text becomes for one athlete, worked out anew a moment after each edit. */
import { useEffect, useState } from "preact/hooks";

import type { Block } from "../../api/types";
import type { LoadsAnswer } from "../answers";
import { loads } from "../desk";
import { ask, useDesk } from "../shell/desk-state";

const LEAST_PAUSE_MS = 500;

export interface Loads {
  readonly state: "off" | "working" | "ready" | "failed";
  /** The last answer for this athlete; of an older text while the newer one is worked out. */
  readonly answer: LoadsAnswer | null;
  readonly fault: unknown;
}

interface Answered {
  readonly athlete: string;
  readonly block: Block | null;
  readonly answer: LoadsAnswer | null;
  readonly fault: unknown;
  /** How long to wait after an edit: as long as the last answer took, for long blocks take longer. */
  readonly pauseMs: number;
}

const NONE: Answered = { athlete: "", block: null, answer: null, fault: null, pauseMs: 0 };

export function useLoads(block: Block, athlete: string): Loads {
  const desk = useDesk();
  const [answered, setAnswered] = useState(NONE);
  const logIns = desk.logIns.value;
  const answers = desk.answers.value;
  const last = answered.athlete === athlete ? answered : NONE;
  useEffect(() => {
    const failed = last.block === block && last.fault !== null;
    if (!athlete || (failed && !answers)) return undefined;
    const stop = new AbortController();
    const work = async () => {
      const asked = desk.now();
      try {
        const answer = await ask(desk, () => loads(block, athlete, { signal: stop.signal }));
        const pauseMs = Math.max(LEAST_PAUSE_MS, desk.now() - asked);
        setAnswered({ athlete, block, answer, fault: null, pauseMs });
      } catch (fault) {
        if (!stop.signal.aborted)
          setAnswered({ ...last, athlete, block, fault, pauseMs: LEAST_PAUSE_MS });
      }
    };
    const timer = setTimeout(() => void work(), last.pauseMs);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [block, athlete, logIns, answers]);
  if (!athlete) return { state: "off", answer: null, fault: null };
  const current = last.block === block;
  const state = !current ? "working" : last.fault ? "failed" : "ready";
  return { state, answer: last.answer, fault: current ? last.fault : null };
}
