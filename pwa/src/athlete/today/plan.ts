/** Which sessions are to be done, from what the feed says and what was done. */
import type { RevisionNews } from "../../api/sync";
import type { LoadSheet } from "../../api/types";
import { fold, type SessionRecord } from "../../offline/fold";
import { isOver, placed, revisionOf } from "../../offline/ledger-view";
import type { PhoneState } from "../../offline/phone";
import { newsOf } from "../hooks";

export interface Plan {
  readonly revision: RevisionNews | null;
  /** Nothing of the revision has been begun yet, so what it changes is news. */
  readonly isNew: boolean;
  /** Not done, in the order in which they are to be done. */
  readonly open: readonly LoadSheet[];
}

export function planOf(state: PhoneState): Plan {
  const revisions = newsOf(state, "revision");
  const blocks = new Map(revisions.map(({ number, block_name }) => [number, block_name]));
  const records = fold(placed(state).map(({ entry }) => entry));
  const over = records.filter(isOver);
  const newest = revisions.at(-1);
  const order = new Map(newest?.sessions.map(({ session }, index) => [session, index]));
  const open = newsOf(state, "sheet")
    .filter((sheet) => !over.some((record) => isSame(record, sheet, blocks)))
    .sort((one, other) => compare(one, other, order));
  const isNew = !records.some(
    ({ revision, started }) => revision === newest?.number && started.length > 0,
  );
  return { revision: newest ?? null, isNew, open };
}

/** A revision carries over what was done in an earlier one of the same block. */
function isSame(
  record: SessionRecord,
  sheet: LoadSheet,
  blocks: ReadonlyMap<number, string>,
): boolean {
  if (record.session !== sheet.session) return false;
  const revision = revisionOf(sheet);
  if (record.revision === revision) return true;
  const block = blocks.get(record.revision ?? 0);
  return block === undefined || block === blocks.get(revision ?? 0);
}

function compare(one: LoadSheet, other: LoadSheet, order: ReadonlyMap<string, number>): number {
  const place = ({ session }: LoadSheet) => order.get(session) ?? Number.MAX_SAFE_INTEGER;
  const byDay = (one.on ?? "").localeCompare(other.on ?? "");
  return place(one) - place(other) || byDay;
}
