/** Limbs whose flow was restricted, in words. */
import type { WorkWeek } from "../answers";

export type LimbWeek = WorkWeek["limbs"][number] & { readonly monday: string };

/** "Left upper arm". */
export function limbName({ side, limb }: Pick<LimbWeek, "side" | "limb">): string {
  return `${side.charAt(0).toUpperCase()}${side.slice(1)} ${limb.replaceAll("-", " ")}`;
}

/** Each limb once, by name. */
export function limbsOf(rows: readonly LimbWeek[]): string[] {
  return [...new Set(rows.map(limbName))].toSorted();
}

/** Weeks in which a limb was worked in more sessions than there may be days. */
export function beyond(rows: readonly LimbWeek[], daysAWeek: number): LimbWeek[] {
  return rows.filter((row) => row.sessions > daysAWeek);
}
