/**
 * The notch walk over what the phone knows and the server did not when it made the sheet: earlier
 * sessions that are not in it yet, and this session's own sets.
 */
import type { LoadSheet, SheetExercise, SheetSet } from "../api/types";
import { is } from "./entry";
import { fold, type SessionRecord } from "./fold";
import type { Placed } from "./ledger-view";
import {
  begin,
  carry,
  evidenceN,
  type NotchTable,
  reckonedAt,
  type Suggestion,
  suggest,
  walk,
  type WalkState,
} from "./notches";
import { exercisesOf } from "./plan";
import { wasSwapped } from "./swaps";

/** A session that was begun, on the sheet that it was begun with. */
export interface Begun {
  readonly sheet: LoadSheet;
  readonly entries: readonly Placed[];
}

export interface Advice {
  readonly suggestion: Suggestion;
  /** Notches above (below: negative) what the session began with. */
  readonly rise: number;
}

interface Evidence {
  readonly turn: number;
  readonly position: number;
  readonly n: number;
}

/**
 * The load to show beside the plan for a set, or null where the sheet has no table for it. `earlier`
 * are the sessions before this one, in the order in which they began.
 */
export function advise(
  exercise: SheetExercise,
  set: SheetSet,
  earlier: readonly Begun[],
  session: Begun,
): Advice | null {
  const table = tableOf(exercise);
  const ladder = set.ladder ?? [];
  if (!table || ladder.length === 0) return null;
  const told = [...earlier.filter((each) => hasLift(each, table.lift)), session];
  const places = { ladder, cap: set.cap ?? null };
  const n = reckonedAt(table, turnWithin(table, set));
  const began = walkBefore(told, table.lift)(told.length - 1, null);
  const now = take(began, table, evidenceOf(session, table.lift, null));
  const suggestion = suggest(now, table, places, n);
  const first = suggest(began, table, places, n);
  return { suggestion, rise: suggestion.notch - first.notch };
}

function turnWithin(table: NotchTable, { turn }: SheetSet): number | null {
  return turn === undefined ? null : Math.min(turn, table.at.length - 1);
}

/**
 * Strength at the start of session `at`, from what lay in the ledger up to a position (null: all). The
 * server knew each session up to its sheet's own position; only the rest is carried on. What was worked
 * out once is kept: with many sessions in a row the same is asked for again and again.
 */
function walkBefore(
  told: readonly Begun[],
  lift: string,
): (at: number, through: number | null) => WalkState {
  const found = new Map<string, WalkState>();

  function startOf(at: number, through: number | null): WalkState {
    const key = `${at} ${through}`;
    const state = found.get(key) ?? workOut(at, through);
    found.set(key, state);
    return state;
  }

  function workOut(at: number, through: number | null): WalkState {
    const table = tableFor(told[at], lift);
    if (!table) throw new RangeError(`session ${at} has no table for ${lift}`);
    const before = told[at - 1];
    const tableBefore = tableFor(before, lift);
    if (!before || !tableBefore) return begin(table);
    const known = told[at]?.sheet.through ?? 0;
    const end = (limit: number | null) =>
      take(startOf(at - 1, limit), tableBefore, evidenceOf(before, lift, limit));
    const limit = through === null ? null : Math.max(through, known);
    return carry(tableBefore, end(limit), end(known), table);
  }

  return startOf;
}

function take(state: WalkState, table: NotchTable, evidence: readonly Evidence[]): WalkState {
  return evidence.reduce(
    (walked, { turn, position, n }) => walk(walked, table, turn, position, n),
    state,
  );
}

/** The heads of a session's sets that speak for a lift, in plan order. */
function evidenceOf(session: Begun, lift: string, through: number | null): Evidence[] {
  const seen = session.entries.filter(
    ({ position }) => through === null || (position !== null && position <= through),
  );
  const [record] = fold(seen.map(({ entry }) => entry));
  if (!record) return [];
  return exercisesOf(session.sheet, { ...record, swaps: NONE })
    .filter((exercise) => exercise.notches?.lift === lift)
    .flatMap((exercise) => exercise.sets.flatMap((set) => evidenceOfSet(exercise, set, record)))
    .sort((one, other) => one.turn - other.turn);
}

function evidenceOfSet(exercise: SheetExercise, set: SheetSet, record: SessionRecord): Evidence[] {
  const told = record.sets.get(set.key);
  const entry = told?.entry;
  if (!entry || !is(entry, "set.done") || set.turn === undefined) return [];
  if (wasSwapped(record, exercise, told.first)) return [];
  const { load_kg, reps, rir, to_failure } = entry.body;
  const load = exercise.loads?.find((each) => each.kg === load_kg);
  const n = evidenceN(reps ?? 0, rir ?? null, to_failure ?? false);
  return load && n !== null ? [{ turn: set.turn, position: load.position, n }] : [];
}

const NONE: ReadonlyMap<string, string> = new Map();

function hasLift({ sheet }: Begun, lift: string): boolean {
  return sheet.exercises.some((exercise) => exercise.notches?.lift === lift);
}

function tableFor(session: Begun | undefined, lift: string): NotchTable | null {
  const found = session?.sheet.exercises.find((exercise) => exercise.notches?.lift === lift);
  return found ? tableOf(found) : null;
}

/** Gains are triples of whole numbers, which the generated types cannot say. */
function tableOf(exercise: SheetExercise): NotchTable | null {
  return (exercise.notches as NotchTable | undefined) ?? null;
}
