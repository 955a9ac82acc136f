import { useEffect, useRef } from "preact/hooks";

import { countdown } from "../../offline/clocks";
import { minutesSeconds } from "../words/times";
import { NextLine } from "./next-line";
import { pieceIn } from "./words";
import type { Resting } from "./worn";
import { useApp } from "../app-context";

interface Props {
  readonly resting: Resting;
  /** On the steady clock. */
  readonly now: number;
}

/** How long wraps stay off now, and what the sets say of next time's load. */
export function BreakBar({ resting, now }: Props) {
  const { offAt, breakS, session, exercise } = resting;
  const state = countdown(breakS, offAt, now);
  const running = state?.phase === "running";
  useRingAtEnd(running);
  if (!state || !running) return null;
  return (
    <aside class="wrap-bar wrap-break" aria-label="Wrap off">
      <p class="wrap-clock" role="timer" aria-label="Break">
        <span class="wrap-time">{minutesSeconds(state.leftS)}</span>
        <span class="wrap-word">{pieceIn(exercise, true)} stay off</span>
      </p>
      {session && exercise && <NextLine exercise={exercise} session={session} />}
    </aside>
  );
}

function useRingAtEnd(running: boolean): void {
  const { alarm } = useApp();
  const before = useRef(running);
  useEffect(() => {
    if (before.current && !running) alarm.ring(2);
    before.current = running;
  }, [running, alarm]);
}
