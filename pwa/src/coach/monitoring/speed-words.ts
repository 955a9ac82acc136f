/** Speed work in words. */
import type { SpeedSession, SpeedSet } from "../answers";
import { figure } from "../block/wish-words";

/** Was the bar's velocity measured in any set? */
export function isMeasured(session: SpeedSession): boolean {
  return session.sets.some((set) => set.mean_power_w !== null);
}

/** "Best in set 4 with 812 W: 8 % above the first set; 6 % lost by the last." */
export function courseInWords({ course }: SpeedSession): string {
  if (!course) return "";
  const best = `Best in set ${course.best_set} with ${watts(course.best_w)} W`;
  const rise =
    course.rise_percent < 0.5 ? "" : `${percent(course.rise_percent)} above the first set`;
  const drop = course.drop_percent < 0.5 ? "" : `${percent(course.drop_percent)} lost by the last`;
  const way = [rise, drop].filter(Boolean).join("; ");
  return way ? `${best}: ${way}.` : `${best}.`;
}

export function watts(value: number): string {
  return figure(Math.round(value));
}

export function percent(value: number): string {
  return `${figure(Math.round(value))} %`;
}

export function perSecond(velocity: number): string {
  return velocity.toFixed(2);
}

/** A number in words, or a dash where there is none. */
export function orDash(value: number | null, words: (value: number) => string): string {
  return value === null ? "—" : words(value);
}

/** Is it the session's best set? */
export function isBest({ course }: SpeedSession, set: SpeedSet): boolean {
  return course?.best_set === set.number;
}
