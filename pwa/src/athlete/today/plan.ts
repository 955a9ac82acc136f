/** Which sessions are to be done, from what the feed says and what was done. */
import type { RevisionNews } from "../../api/sync";
import type { LoadSheet } from "../../api/types";
import { fold, type SessionRecord } from "../../offline/fold";
import { isOver, placed, revisionOf } from "../../offline/ledger-view";
import type { PhoneState } from "../../offline/phone";
import { newsOf } from "../hooks";
import { daysBetween, noonOf } from "../words/times";

export interface Plan {
  readonly revision: RevisionNews | null;
  /** Nothing of the revision has been begun yet, so what it changes is news. */
  readonly isNew: boolean;
  /** Not done, in the order in which they are to be done. */
  readonly open: readonly LoadSheet[];
}

type Runs = ReadonlyMap<number, number | string>;

/** `underWay` is the session that is being done: it is open no more. */
export function planOf(state: PhoneState, underWay: SessionRecord | null, now: number): Plan {
  const revisions = newsOf(state, "revision");
  const runs = runsOf(revisions);
  const records = fold(placed(state).map(({ entry }) => entry));
  const over = [...records.filter(isOver), ...(underWay ? [underWay] : [])];
  const newest = revisions.at(-1);
  const open = newsOf(state, "sheet")
    .filter((sheet) => !over.some((record) => isSame(record, sheet, runs)))
    .sort(inOrder(newest, runs, now));
  const isNew = !records.some(
    ({ revision, started }) => revision === newest?.number && started.length > 0,
  );
  return { revision: newest ?? null, isNew, open };
}

/** By revision, the run it belongs to; the block's name where an older server told no more. */
function runsOf(revisions: readonly RevisionNews[]): Runs {
  const runs = new Map<number, number | string>();
  for (const { number, run, block_name } of revisions) {
    runs.set(number, run === undefined ? block_name : (runs.get(run) ?? run));
  }
  return runs;
}

/** A revision carries over what was done in an earlier one of the same run. */
function isSame(record: SessionRecord, sheet: LoadSheet, runs: Runs): boolean {
  if (record.session !== sheet.session) return false;
  const revision = revisionOf(sheet);
  if (record.revision === revision) return true;
  const run = runs.get(record.revision ?? 0);
  return run === undefined || run === runs.get(revision ?? 0);
}

/**
 * As the newest revision has them. What is left of the plan before goes first as long as its day has not
 * passed, and else last.
 */
function inOrder(
  newest: RevisionNews | undefined,
  runs: Runs,
  now: number,
): (one: LoadSheet, other: LoadSheet) => number {
  const order = new Map(newest?.sessions.map(({ session }, index) => [session, index]));
  const place = (sheet: LoadSheet): number => {
    const known = runs.get(revisionOf(sheet) ?? 0) === runs.get(newest?.number ?? 0);
    if (known) return order.get(sheet.session) ?? LAST;
    return sheet.on && daysBetween(noonOf(sheet.on), now) <= 0 ? FIRST : LAST;
  };
  return (one, other) => place(one) - place(other) || (one.on ?? "").localeCompare(other.on ?? "");
}

const FIRST = -1;
const LAST = Number.MAX_SAFE_INTEGER;
