/** Readings of a hanging scale: whole centimetres, tenths of a kilogram. */

export interface Reading {
  readonly cm: number;
  readonly tenths: number;
}

/** Of its length at rest: a textbook limit for rubber bands. */
const MOST_STRETCH = 2.5;
export const FEWEST = 2;

export function mostCm(restCm: number): number {
  return Math.floor(restCm * MOST_STRETCH);
}

/** Shortest first; a second reading at one length takes the place of the first. */
export function withReading(readings: readonly Reading[], one: Reading): Reading[] {
  const others = readings.filter(({ cm }) => cm !== one.cm);
  return [...others, one].sort((a, b) => a.cm - b.cm);
}

/** What is doubtful in them, in words; null where nothing is. */
export function doubtOf(readings: readonly Reading[]): string | null {
  const at = readings.findIndex((one, place) => one.tenths <= (readings[place - 1]?.tenths ?? 0));
  const [before, one] = [readings[at - 1], readings[at]];
  if (!one) return null;
  if (!before) return `A band pulls with something at ${one.cm} cm. Take that reading again.`;
  return `At ${one.cm} cm it pulls no more than at ${before.cm} cm. Take both again, on the way up.`;
}

/** How good the loads will be, by the number of readings (as the server's law of bands has it). */
export function worthOf(count: number): string {
  if (count < FEWEST) return "Two readings at least; four are better.";
  if (count < 4) return "Good to about 5 %. Four or more are as good as the scale.";
  return "As good as the scale.";
}
