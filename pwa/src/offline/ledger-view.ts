/** All entries that the phone knows, its own and those of the athlete's other devices, and what of it. */
import type { LoadSheet } from "../api/types";
import type { Pin, Running } from "./database";
import type { Draft } from "./entry";
import { fold, type SessionRecord } from "./fold";
import { grouped } from "./grouped";
import type { PhoneState } from "./phone";

export interface Placed {
  readonly entry: Draft;
  /** Its place in the athlete's ledger on the server; null as long as it has none. */
  readonly position: number | null;
  /** By how much this phone's clock had jumped when it was recorded, or has by now where another phone did. */
  readonly jumpedMs?: number;
}

/** When it was recorded, on the steady clock. */
export function steadyOf({ entry, jumpedMs = 0 }: Placed): number {
  return Date.parse(entry.at) - jumpedMs;
}

/** A session that was begun on this phone. */
export interface Session {
  readonly sheet: LoadSheet;
  readonly record: SessionRecord;
  readonly entries: readonly Placed[];
  readonly startedAt: number;
  /** The same on the steady clock. */
  readonly steadyStart: number;
  /** Warm-up sets done, by exercise. */
  readonly ramp: Readonly<Record<string, number>>;
  /** What goes on within a set, by its `answerKey`. */
  readonly running: Readonly<Record<string, Running>>;
}

type Known = Pick<PhoneState, "entries" | "feed" | "unsaved" | "pins" | "identity" | "notes">;

export function placed({ entries, feed, unsaved, identity, notes }: Known): Placed[] {
  const own = entries
    .filter((kept) => kept.athlete === identity?.athlete.id)
    // A held entry is kept by the server but not counted: to the walk it has no place yet.
    .map(({ entry, position, verdict, jumpedMs = 0 }) => ({
      entry,
      position: verdict === "held" ? null : (position ?? null),
      jumpedMs,
    }));
  const others = feed
    .filter((item) => item.kind === "entry")
    .map(({ body, position }) => ({ entry: body as Draft, position, jumpedMs: notes.jumps?.byMs }));
  const here = unsaved.map(({ draft, jumpedMs }) => ({ entry: draft, position: null, jumpedMs }));
  return [...own, ...others, ...here];
}

/** Sessions begun on this phone, in the order in which they began. */
export function sessionsBegun(state: Known): Session[] {
  const groups = grouped(placed(state), ({ entry }) => entry.session);
  const starting = state.unsaved.flatMap(({ draft, begins, jumpedMs }) =>
    begins
      ? [{ sheet: begins, startedAt: Date.parse(draft.at), jumpedMs, ramp: {}, running: {} }]
      : [],
  );
  const pinned = [...state.pins].sort(byStart);
  return [...pinned, ...starting].map(({ sheet, startedAt, jumpedMs = 0, ramp, running = {} }) => {
    const entries = groups.get(sheet.session) ?? [];
    const times = { startedAt, steadyStart: startedAt - jumpedMs };
    return { sheet, ...times, ramp, running, ...recordOf(sheet, entries) };
  });
}

/** By number under one device id; only between two of them does the clock have to do. */
function byStart(one: Pin, other: Pin): number {
  return one.device === other.device ? one.n - other.n : one.startedAt - other.startedAt;
}

function recordOf(
  sheet: LoadSheet,
  entries: readonly Placed[],
): Pick<Session, "record" | "entries"> {
  const revision = revisionOf(sheet);
  const own = entries.filter(({ entry }) => entry.revision === revision);
  const [record] = fold(own.map(({ entry }) => entry));
  return { entries: own, record: record ?? emptyRecord(revision, sheet.session) };
}

export function revisionOf(sheet: LoadSheet): number | null {
  return sheet.revision ? sheet.revision : null;
}

function emptyRecord(revision: number | null, session: string): SessionRecord {
  return {
    revision,
    session,
    opened: [],
    started: [],
    finished: null,
    stopped: null,
    sets: new Map(),
    answers: new Map(),
    added: new Map(),
    swaps: new Map(),
    swapped: new Map(),
    conflicts: [],
  };
}

/**
 * A session is over once it was finished or stopped, unless it was started again after that: ids made
 * on this phone rise with its clock.
 */
export function isOver({ started, finished, stopped }: SessionRecord): boolean {
  const ends = [finished, stopped].flatMap((entry) => (entry ? [entry.id] : []));
  const last = started.at(-1)?.id ?? "";
  return ends.some((id) => id > last);
}

/** The session under way: the last one begun, as long as it is not over. */
export function underWay(begun: readonly Session[]): Session | null {
  const last = begun.at(-1);
  return last && !isOver(last.record) ? last : null;
}
