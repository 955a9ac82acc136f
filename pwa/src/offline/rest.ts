/**
 * The rest clock. It goes by the time of day and not by ticks, so that it is right after a locked
 * screen, a reload or a killed tab.
 */
import type { Rest } from "../api/types";
import { MINUTE_MS, SECOND_MS } from "./clock";

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

/** A rest that went on for this long is a pause, not a rest. */
export const LONGEST_MS = 30 * MINUTE_MS;

/**
 * Null where no rest is on: nothing was prescribed, or the phone's clock has jumped so that the start
 * lies ahead.
 */
export function restState(
  rest: Rest | undefined,
  startedAt: number,
  now: number,
): RestState | null {
  const elapsed = now - startedAt;
  if (!rest || elapsed < -SECOND_MS) return null;
  const elapsedS = Math.max(0, Math.floor(elapsed / SECOND_MS));
  return {
    phase: phaseAt(rest, elapsed),
    elapsedS,
    leftS: Math.max(0, Math.ceil(rest.from_s - Math.max(0, elapsed) / SECOND_MS)),
    share: Math.min(1, elapsedS / Math.max(1, rest.to_s)),
  };
}

function phaseAt(rest: Rest, elapsed: number): RestPhase {
  if (elapsed >= LONGEST_MS) return "long over";
  if (elapsed >= rest.to_s * SECOND_MS) return "over";
  return elapsed >= rest.from_s * SECOND_MS ? "ready" : "resting";
}

/** Milliseconds until what the clock shows changes: the next whole second of the rest. */
export function untilNextSecond(startedAt: number, now: number): number {
  const into = (((now - startedAt) % SECOND_MS) + SECOND_MS) % SECOND_MS;
  return SECOND_MS - into;
}
