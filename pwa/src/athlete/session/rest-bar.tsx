import { useEffect, useRef } from "preact/hooks";

import { type RestPhase, type RestState, restState } from "../../offline/rest";
import { useApp } from "../app-context";
import { useAnnounce } from "../device/announce";
import { useSeconds } from "../device/now";
import { minutesSeconds } from "../words/times";
import { useRecorder } from "./recording";
import type { SessionView } from "./view";

/** The rest clock, and beside it what can be done about the last set. */
export function RestBar({ view }: { readonly view: SessionView }) {
  const { last, rested } = view;
  const now = useSeconds(rested?.doneAt ?? null);
  const rest = rested?.exercise.rest;
  const state = rested ? restState(rest, rested.doneAt, now) : null;
  const shown = rest && state && state.phase !== "long over" ? state : null;
  useRestAlarm(shown?.phase ?? null);
  if (!last) return null;
  return (
    <div class={`rest rest-${shown?.phase ?? "none"}`}>
      {shown && rest ? (
        <div class="rest-clock" role="timer" aria-label="Rest">
          <span class="rest-time">{minutesSeconds(shown.elapsedS)}</span>
          <span class="rest-word">{restInWords(shown.phase, rest)}</span>
        </div>
      ) : (
        <p class="rest-word">{unclockedInWords(view, state)}</p>
      )}
      <LastSetButtons view={view} />
      {shown && (
        <svg class="rest-line" viewBox="0 0 100 2" preserveAspectRatio="none" aria-hidden="true">
          <rect width={shown.share * 100} height="2" />
        </svg>
      )}
    </div>
  );
}

/** Where no clock runs; whether a rest so long was a break or a changed clock is not known. */
function unclockedInWords({ last, rested }: SessionView, state: RestState | null): string {
  if (last?.side && !rested) return `${last.side === "left" ? "Left" : "Right"} side recorded`;
  if (!rested?.exercise.rest) return "Last set recorded";
  if (state) return "Over half an hour by this phone's clock: go when ready";
  return "This phone's clock was changed: go when ready";
}

function restInWords(
  phase: RestPhase,
  { from_s, to_s }: { readonly from_s: number; readonly to_s: number },
): string {
  if (phase === "resting" && from_s === to_s) return `rest ${minutesSeconds(from_s)}`;
  if (phase === "resting") return `rest ${minutesSeconds(from_s)} to ${minutesSeconds(to_s)}`;
  if (phase === "ready") return `go, by ${minutesSeconds(to_s)}`;
  return "rest is over: go";
}

function LastSetButtons({ view }: { readonly view: SessionView }) {
  const { focus } = useApp();
  const { undo } = useRecorder(view.session);
  const { last } = view;
  if (!last) return null;
  const { exercise, set, side } = last;
  return (
    <div class="rest-buttons">
      <button type="button" class="button" onClick={() => undo(set, side)}>
        Undo
      </button>
      <button
        type="button"
        class="button"
        onClick={() => {
          const correcting = { exercise: exercise.key, set: set.key, side };
          focus.value = { ...focus.value, correcting };
        }}
      >
        Correct
      </button>
    </div>
  );
}

/** Told when a rest may end and when it should. */
function useRestAlarm(phase: RestPhase | null): void {
  const announce = useAnnounce();
  const before = useRef(phase);
  useEffect(() => {
    const was = before.current;
    before.current = phase;
    const due = (was === "resting" && phase === "ready") || (was === "ready" && phase === "over");
    if (!due) return;
    return phase === "ready" ? announce(2, "Go when ready") : announce(3, "Go now");
  }, [phase]);
}
