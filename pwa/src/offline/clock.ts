/** The phone's clock and timers, passed in so that tests can hold them still. */

export interface Clock {
  /** Milliseconds since 1970, as this phone believes. */
  now(): number;
}

export interface Timers {
  /** Runs once after so many milliseconds; the answer calls it off. */
  after(ms: number, run: () => void): () => void;
}

export const SECOND_MS = 1000;
export const MINUTE_MS = 60 * SECOND_MS;
export const DAY_MS = 24 * 60 * MINUTE_MS;

export const deviceClock: Clock = { now: () => Date.now() };

export const deviceTimers: Timers = {
  after(ms, run) {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};

/** Local time with its offset, as in 2026-02-03T18:04:11.250+01:00. */
export function stamp(ms: number, offsetMin = -new Date(ms).getTimezoneOffset()): string {
  const local = new Date(ms + offsetMin * MINUTE_MS).toISOString().slice(0, -1);
  const size = Math.abs(offsetMin);
  const sign = offsetMin < 0 ? "-" : "+";
  return `${local}${sign}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, "0");
}
