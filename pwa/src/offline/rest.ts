/** The rest clock, with its range: when a set may follow, and when it should. */
import type { Rest } from "../api/types";
import { SECOND_MS } from "./clock";
import { elapsedMs, LONGEST_MS } from "./clocks";

export type RestPhase = "resting" | "ready" | "over" | "long over";

export interface RestState {
  readonly phase: RestPhase;
  /** Whole seconds since the set was recorded. */
  readonly elapsedS: number;
  /** Whole seconds until the rest may end; 0 once it may. */
  readonly leftS: number;
  /** Share of the range that has passed, 0 to 1, up to its late end. */
  readonly share: number;
}

/**
 * Null where no rest is on: nothing was prescribed, or the start lies ahead because the phone's clock was set
 * back while the app was closed.
 */
export function restState(
  rest: Rest | undefined,
  startedAt: number,
  now: number,
): RestState | null {
  const elapsed = elapsedMs(startedAt, now);
  if (!rest || elapsed === null) return null;
  const elapsedS = Math.floor(elapsed / SECOND_MS);
  return {
    phase: phaseAt(rest, elapsed),
    elapsedS,
    leftS: Math.max(0, Math.ceil(rest.from_s - elapsed / SECOND_MS)),
    share: Math.min(1, elapsedS / Math.max(1, rest.to_s)),
  };
}

function phaseAt(rest: Rest, elapsed: number): RestPhase {
  if (elapsed >= LONGEST_MS) return "long over";
  if (elapsed >= rest.to_s * SECOND_MS) return "over";
  return elapsed >= rest.from_s * SECOND_MS ? "ready" : "resting";
}
