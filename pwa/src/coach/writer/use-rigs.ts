/** The rigs that a kit can make for what is written, asked for anew a moment after each edit. */
import { useEffect, useState } from "preact/hooks";

import type { Block, Rig } from "../../api/types";
import type { FoundRigs } from "../answers";
import { soughtFor } from "../block/rigs";
import { findRigs } from "../desk";
import { ask, useDesk } from "../shell/desk-state";

const PAUSE_MS = 400;

/** An exercise, by the keys of its session and its own. */
export interface RigPlace {
  readonly session: string;
  readonly exercise: string;
}

export interface Rigs {
  /** The last answer; of an older text where `stale`. */
  readonly answer: FoundRigs | null;
  readonly fault: unknown;
  readonly stale: boolean;
}

interface Answered {
  readonly block: Block | null;
  readonly athlete: string;
  readonly answer: FoundRigs | null;
  readonly fault: unknown;
}

const NONE: Answered = { block: null, athlete: "", answer: null, fault: null };

export function useRigs(block: Block, athlete: string, place: RigPlace, rig: Rig): Rigs {
  const desk = useDesk();
  const [answered, setAnswered] = useState(NONE);
  const logIns = desk.logIns.value;
  const answers = desk.answers.value;
  useEffect(() => {
    const stop = new AbortController();
    const work = async () => {
      const sought = { document: block, athlete, ...place, rig: soughtFor(rig) };
      try {
        const answer = await ask(desk, () => findRigs(sought, { signal: stop.signal }));
        setAnswered({ block, athlete, answer, fault: null });
      } catch (fault) {
        if (!stop.signal.aborted) setAnswered({ block, athlete, answer: null, fault });
      }
    };
    const timer = setTimeout(() => void work(), answered.block === null ? 0 : PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [block, athlete, logIns, answers]);
  const last = answered.athlete === athlete ? answered : NONE;
  return { answer: last.answer, fault: last.fault, stale: last.block !== block };
}
