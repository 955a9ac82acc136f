/** Where the writer is in a block: a week, and one of its sessions or none. */
import type { Block } from "../../api/types";
import { findSession } from "./weeks";

export interface Place {
  readonly week: number;
  readonly session: number | null;
}

export function firstPlace(block: Block): Place {
  const week = block.weeks.findIndex((each) => each.sessions.length > 0);
  return week < 0 ? { week: 0, session: null } : { week, session: 0 };
}

/** The place of the session with this key, or the first one. */
export function placeOf(block: Block, session: string | null): Place {
  return (session === null ? null : findSession(block, session)) ?? firstPlace(block);
}

/**
 * The same place after a change: it goes with its session or its week, or stays near if they went.
 * From no session it goes to one that has come, so that an undo shows what it brought back.
 */
export function placeAfter(place: Place, before: Block, after: Block): Place {
  const week = before.weeks[place.week];
  const session = place.session === null ? undefined : week?.sessions[place.session];
  const found = session && findSession(after, session.key);
  if (found) return found;
  const came = place.session === null ? newSession(before, after) : null;
  if (came) return came;
  const same = after.weeks.findIndex((each) => each.key === week?.key);
  const near = Math.max(0, Math.min(place.week, after.weeks.length - 1));
  return { week: same < 0 ? near : same, session: null };
}

function newSession(before: Block, after: Block): Place | null {
  const keys = after.weeks.flatMap((week) => week.sessions.map((each) => each.key));
  const key = keys.find((each) => findSession(before, each) === null);
  return key === undefined ? null : findSession(after, key);
}
