/**
 * Every clock of the phone: rest, hold, block, stopwatch. They go by the steady clock and not by ticks, so that
 * they are right after a locked screen, a reload or a killed tab.
 */
import { MINUTE_MS, SECOND_MS } from "./clock";

/** A clock that went on for this long was forgotten. */
export const LONGEST_MS = 30 * MINUTE_MS;

/** Milliseconds since the start; null where it lies ahead: the phone's clock was set back meanwhile. */
export function elapsedMs(startedAt: number, now: number): number | null {
  const elapsed = now - startedAt;
  return elapsed < -SECOND_MS ? null : Math.max(0, elapsed);
}

interface Countdown {
  /** Whole seconds that have passed, and that are left. */
  readonly elapsedS: number;
  readonly leftS: number;
  /** Share that has passed, 0 to 1. */
  readonly share: number;
  readonly phase: "running" | "over" | "forgotten";
}

/** Null where no start is known, or where it lies ahead. */
export function countdown(
  seconds: number,
  startedAt: number | null,
  now: number,
): Countdown | null {
  const elapsed = startedAt === null ? null : elapsedMs(startedAt, now);
  if (elapsed === null) return null;
  const whole = seconds * SECOND_MS;
  return {
    elapsedS: Math.min(seconds, Math.floor(elapsed / SECOND_MS)),
    leftS: Math.max(0, Math.ceil((whole - elapsed) / SECOND_MS)),
    share: Math.min(1, elapsed / Math.max(1, whole)),
    phase: phaseOf(elapsed, whole),
  };
}

function phaseOf(elapsed: number, whole: number): Countdown["phase"] {
  if (elapsed < whole) return "running";
  return elapsed < whole + LONGEST_MS ? "over" : "forgotten";
}

/** Milliseconds until what a clock shows changes: the next whole second since its start. */
export function untilNextSecond(startedAt: number, now: number): number {
  const into = (((now - startedAt) % SECOND_MS) + SECOND_MS) % SECOND_MS;
  return SECOND_MS - into;
}
