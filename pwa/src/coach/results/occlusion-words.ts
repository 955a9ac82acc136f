/** Occlusion work of a session in words: what was asked, how long it was worn. */
import type { OcclusionResult, Worn } from "../answers";
import { figure } from "../block/wish-words";

/** "4:05 min". */
export function minutes(seconds: number): string {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")} min`;
}

/** "Wrap on the upper arm, tightness 5 of 10, one side after the other". */
export function askedInWords(asked: OcclusionResult): string {
  const by = asked.restriction === "wrap" ? "Wrap" : "Cuff";
  const parts = [
    `${by} on the ${asked.limb}`,
    asked.tightness === null ? "" : `tightness ${asked.tightness} of 10`,
    asked.pressure_percent === null ? "" : `${figure(asked.pressure_percent)} % of occlusion`,
    asked.both_at_once ? "both sides at once" : "one side after the other",
  ];
  return parts.filter(Boolean).join(", ");
}

/** "about 4:30 min on, off by 15:00 min"; empty where the sheet says nothing. */
export function wearPlanned({ wear_s, limit_s }: OcclusionResult): string {
  if (wear_s === null || limit_s === null) return "";
  return `about ${minutes(wear_s)} on, off by ${minutes(limit_s)}`;
}

/** "4:00 min", or "4:00 min and 5:10 min, 9:10 min in all". */
export function wornInWords({ seconds }: Pick<Worn, "seconds">): string {
  const each = seconds.map(minutes).join(" and ");
  const total = seconds.reduce((sum, one) => sum + one, 0);
  return seconds.length > 1 ? `${each}, ${minutes(total)} in all` : each;
}

/** What studies found in the sets from `from` to `to`, numbered from 1: "36, 15". */
export function expectedIn(asked: OcclusionResult, from: number, to: number): string {
  return asked.expected
    .slice(from - 1, to)
    .map((reps) => figure(Math.round(reps)))
    .join(", ");
}
