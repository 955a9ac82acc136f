/** Numbers of the monitoring as they are read. */
import type { LoadDay, LoadWeek } from "../answers";
import { figure, signed } from "../block/wish-words";

/** To a tenth. */
export function tenths(value: number): string {
  return figure(Math.round(value * 10) / 10);
}

/** A ratio to two decimals; in words where there is none, and why. */
export function monotonyInWords(week: LoadWeek): string {
  if (!week.whole) return "not known yet";
  return week.monotony === null ? "undefined" : figure(Math.round(week.monotony * 100) / 100);
}

export function strainInWords(week: LoadWeek): string {
  if (!week.whole) return "not known yet";
  return week.strain_au === null ? "undefined" : figure(Math.round(week.strain_au));
}

/** "+12 %"; a dash where there is nothing to compare with. */
export function changeInWords({ change_percent: percent }: LoadDay): string {
  return percent === null ? "—" : `${signed(Math.round(percent))} %`;
}
