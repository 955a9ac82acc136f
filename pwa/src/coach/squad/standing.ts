/** How far a revision has come, and what silence means. */
import type { SquadLine, Stages } from "../answers";
import { day, dayAndClock, daysBetween } from "../shell/when";

const STAGES = [
  ["sent_at", "sent"],
  ["delivered_at", "delivered"],
  ["opened_at", "opened"],
  ["started_at", "started"],
  ["finished_at", "finished"],
  ["synced_at", "synced"],
] as const satisfies readonly (readonly [keyof Stages, string])[];

export interface Stage {
  readonly name: string;
  readonly at: string | null;
  /** Reached itself, or passed on the way to a later one. */
  readonly reached: boolean;
}

/**
 * The six stages in order. A later one vouches for those before it, which may never be told; only
 * "synced", which says when the phone was last heard, counts once the work is finished.
 */
export function stagesOf(states: Stages): Stage[] {
  const done = STAGES.slice(0, -1).findLastIndex(([field]) => states[field] !== null);
  const finished = states.finished_at !== null;
  return STAGES.map(([field, name], place) => {
    const reached = field === "synced_at" ? finished && states.synced_at !== null : place <= done;
    return { name, at: reached ? states[field] : null, reached };
  });
}

/** "finished Tuesday 18:40", or "nothing sent". */
export function lastStage(states: Stages, now: number): string {
  const last = stagesOf(states).findLast((stage) => stage.reached);
  if (!last) return "nothing sent";
  return last.at === null ? last.name : `${last.name} ${dayAndClock(last.at, now)}`;
}

const QUIET_DAYS = 2;

interface Heard {
  readonly text: string;
  readonly quiet: boolean;
}

/** When the phone was last heard: silence for some days is said, and is not yet a missed session. */
export function heard(line: SquadLine, now: number): Heard {
  if (line.devices === 0) return { text: "no phone paired", quiet: true };
  if (line.last_heard_at === null) return { text: "never heard from", quiet: true };
  if (daysBetween(line.last_heard_at, now) >= QUIET_DAYS) {
    return { text: `not heard from since ${day(line.last_heard_at, now)}`, quiet: true };
  }
  return { text: `heard from ${dayAndClock(line.last_heard_at, now)}`, quiet: false };
}
