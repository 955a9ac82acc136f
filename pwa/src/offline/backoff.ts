/** How long to wait after a failed exchange. */

export const FIRST_MS = 2_000;
export const LONGEST_MS = 300_000;

/**
 * Doubles from 2 s to 5 min with the failures so far (from 1), of which between half and all is
 * waited: phones that lost the server together do not come back together.
 */
export function backoff(failures: number, random: () => number): number {
  const whole = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(failures - 1, 20));
  return Math.max(FIRST_MS, Math.round(whole * (0.5 + random() / 2)));
}
