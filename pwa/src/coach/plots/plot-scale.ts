/** Axes of a plot: round ticks, and places on the drawing. */

const ROUND = [1, 2, 2.5, 5, 10];

/** Round values from at or below `low` to at or above `high`, about `about` of them. */
export function ticks(low: number, high: number, about: number): number[] {
  const span = Math.max(high - low, 1e-9);
  const rough = span / Math.max(1, about - 1);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = (ROUND.find((each) => each * power >= rough) ?? 10) * power;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  const count = Math.max(1, last - first);
  return Array.from({ length: count + 1 }, (_, place) => tidy((first + place) * step));
}

const DAY_MS = 86_400_000;

/** Moments to write on a time axis: `about` of them, evenly spaced, whole days apart. */
export function timeTicks(from: number, to: number, about: number): number[] {
  const days = Math.max(1, Math.round((to - from) / DAY_MS));
  const step = Math.max(1, Math.ceil(days / Math.max(1, about - 1)));
  const count = Math.floor(days / step);
  return Array.from({ length: count + 1 }, (_, place) => from + place * step * DAY_MS);
}

/** The place of a value between two places on the drawing. */
export function scale(
  [low, high]: readonly [number, number],
  [start, end]: readonly [number, number],
): (value: number) => number {
  const span = high - low;
  return (value) =>
    span === 0 ? (start + end) / 2 : start + ((value - low) / span) * (end - start);
}

function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
