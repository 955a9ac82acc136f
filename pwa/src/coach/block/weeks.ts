/** Adding, copying, ordering and removing weeks and sessions. */
import type { Block, SessionPlan, Week } from "../../api/types";
import { freshKey, type Random } from "./keys";
import { inserted, moved, without } from "./lists";
import { sessionAt, withSession, withWeek, type SessionAt } from "./places";

export function newBlock(name: string, random: Random): Block {
  const empty = { key: freshKey(new Set(), random), name, weeks: [] };
  return addWeek(addWeek(empty, random), random);
}

export function addWeek(block: Block, random: Random): Block {
  const key = freshKey(weekKeys(block), random);
  const week: Week = { key, name: `Week ${block.weeks.length + 1}`, sessions: [] };
  return { ...block, weeks: [...block.weeks, week] };
}

/**
 * The week's sessions once more, in the next week: in the one that follows where that is empty, else
 * in a new one between. The sessions take new keys; exercises and sets keep theirs, which are unique
 * within a session.
 */
export function copyWeek(block: Block, at: number, random: Random): Block {
  const week = block.weeks[at];
  if (!week) return block;
  const taken = sessionKeys(block);
  const sessions = week.sessions.map((session) => {
    const key = freshKey(taken, random);
    taken.add(key);
    return { ...session, key };
  });
  const next = block.weeks[at + 1];
  if (next?.sessions.length === 0) {
    return withWeek(block, at + 1, (empty) => ({ ...empty, sessions }));
  }
  const key = freshKey(weekKeys(block), random);
  const copy: Week = { key, name: nextName(week.name, block), sessions };
  return { ...block, weeks: inserted(block.weeks, at + 1, copy) };
}

export function moveWeek(block: Block, from: number, to: number): Block {
  return { ...block, weeks: moved(block.weeks, from, to) };
}

export function removeWeek(block: Block, at: number): Block {
  return { ...block, weeks: without(block.weeks, at) };
}

export function addSession(block: Block, week: number, day: number, random: Random): Block {
  const name = `Session ${(block.weeks[week]?.sessions.length ?? 0) + 1}`;
  return putSession(block, week, { key: "", name, day, exercises: [] }, random);
}

/** Puts a copy of a session into a week, on its day, under a key of its own. */
export function putSession(
  block: Block,
  week: number,
  session: SessionPlan,
  random: Random,
): Block {
  const key = freshKey(sessionKeys(block), random);
  return withWeek(block, week, (each) => byDay(each, [...each.sessions, { ...session, key }]));
}

export function setDay(block: Block, at: SessionAt, day: number): Block {
  const changed = withSession(block, at, (session) => ({ ...session, day }));
  return withWeek(changed, at.week, (week) => byDay(week, week.sessions));
}

/** Changes places, and days, with the neighbour before (-1) or after (1). */
export function swapSession(block: Block, at: SessionAt, step: -1 | 1): Block {
  const one = sessionAt(block, at);
  const other = sessionAt(block, { ...at, session: at.session + step });
  if (!one || !other) return block;
  return withWeek(block, at.week, (week) => {
    const swapped = week.sessions.map((each) => {
      if (each === one) return { ...each, day: other.day };
      return each === other ? { ...each, day: one.day } : each;
    });
    return { ...week, sessions: moved(swapped, at.session, at.session + step) };
  });
}

export function removeSession(block: Block, at: SessionAt): Block {
  return withWeek(block, at.week, (week) => ({
    ...week,
    sessions: without(week.sessions, at.session),
  }));
}

/** The place of the session with this key, or null. */
export function findSession(block: Block, key: string): SessionAt | null {
  for (const [week, each] of block.weeks.entries()) {
    const session = each.sessions.findIndex((one) => one.key === key);
    if (session >= 0) return { week, session };
  }
  return null;
}

/** The first day of the week that no session of this week takes; Monday where all are taken. */
export function freeDay(week: Week): number {
  const taken = new Set(week.sessions.map((session) => session.day));
  return [1, 3, 5, 2, 4, 6, 7].find((day) => !taken.has(day)) ?? 1;
}

function byDay(week: Week, sessions: readonly SessionPlan[]): Week {
  return { ...week, sessions: [...sessions].sort((a, b) => a.day - b.day) };
}

function weekKeys(block: Block): Set<string> {
  return new Set(block.weeks.map((week) => week.key));
}

function sessionKeys(block: Block): Set<string> {
  return new Set(block.weeks.flatMap((week) => week.sessions.map((session) => session.key)));
}

/** "Week 3" after "Week 2" where that is free, else the name with "copy". */
function nextName(name: string, block: Block): string {
  const names = new Set(block.weeks.map((week) => week.name));
  const next = name.replace(/\d+$/, (digits) => String(Number(digits) + 1));
  return next !== name && !names.has(next) ? next : `${name} copy`.slice(0, 80);
}
