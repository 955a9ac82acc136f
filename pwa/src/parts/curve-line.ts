/** Where the line of a force curve runs, in the units of its drawing; heights count downwards. */

export const CURVE_WIDTH = 320;
export const CURVE_HEIGHT = 56;

/** Room for the dots at the ends. */
const EDGE = 6;

/** The least share of the largest force that the height stands for: a flat curve stays flat. */
const LEAST_SPAN = 0.25;

interface CurveLine {
  readonly path: string;
  readonly x: (position: number) => number;
  readonly y: (kg: number) => number;
}

/** `points` are evenly spaced from the start (left) to the end (right) of the lift; two at least. */
export function curveLine(points: readonly number[]): CurveLine {
  const most = Math.max(...points);
  const least = Math.min(...points);
  const span = Math.max(most - least, most * LEAST_SPAN, Number.MIN_VALUE);
  const middle = (most + least) / 2;
  const x = (position: number) => rounded(EDGE + position * (CURVE_WIDTH - 2 * EDGE));
  const y = (kg: number) =>
    rounded(CURVE_HEIGHT / 2 - ((kg - middle) / span) * (CURVE_HEIGHT - 2 * EDGE));
  const steps = points.map((kg, index) => `${x(index / (points.length - 1))} ${y(kg)}`);
  return { path: `M${steps.join("L")}`, x, y };
}

/** The force at a position from 0 to 1, along the straight line between the two nearest points. */
export function forceAt(points: readonly number[], position: number): number {
  const last = points.length - 1;
  const place = Math.min(Math.max(position, 0), 1) * last;
  const before = Math.min(Math.floor(place), Math.max(last - 1, 0));
  const low = points[before] ?? 0;
  const high = points[before + 1] ?? low;
  return low + (high - low) * (place - before);
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}
