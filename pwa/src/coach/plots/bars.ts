/** Where bars stand on a drawing, and which of them are named. */

export interface Band {
  readonly middle: number;
  readonly start: number;
  readonly width: number;
  /** From one bar to the next. */
  readonly step: number;
}

const WIDEST = 46;
const SHARE = 0.68;

/** A place for each of `count` bars between two ends, with room between them. */
export function bands(count: number, [start, end]: readonly [number, number]): Band[] {
  const step = (end - start) / Math.max(1, count);
  const width = Math.min(WIDEST, step * SHARE);
  return Array.from({ length: count }, (_, place) => {
    const middle = start + step * (place + 0.5);
    return { middle, start: middle - width / 2, width, step };
  });
}

/** The places to be named where each name takes `namePx`: evenly apart, the last one among them. */
export function named(count: number, widthPx: number, namePx: number): number[] {
  const most = Math.max(1, Math.floor(widthPx / namePx));
  const step = Math.max(1, Math.ceil(count / most));
  const places = Array.from({ length: count }, (_, place) => place);
  return places.filter((place) => (count - 1 - place) % step === 0);
}

/** From where to where each part of a stack goes. */
export function stacked(parts: readonly number[]): (readonly [number, number])[] {
  let below = 0;
  return parts.map((part) => {
    const from = below;
    below += part;
    return [from, below] as const;
  });
}
