import { dayAndMonth } from "../shell/when";
import { timeTicks } from "./plot-scale";

const DATE_PX = 90;

/** Milliseconds since 1970 of a calendar day, for an axis of days. */
export function dayAt(iso: string): number {
  return Date.parse(`${iso}T00:00:00Z`);
}

/** Days to be written under a plot, as many as there is room for. */
export function dayMarks(
  from: string,
  to: string,
): (width: number) => { at: number; text: string }[] {
  return (width) =>
    timeTicks(dayAt(from), dayAt(to), Math.max(2, Math.floor(width / DATE_PX))).map((at) => ({
      at,
      text: dayAndMonth(new Date(at).toISOString().slice(0, 10)),
    }));
}
