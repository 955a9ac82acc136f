/** How tight a wrap without a gauge feels between sets. */
import { is, type Side } from "../../offline/entry";
import type { Session } from "../../offline/ledger-view";
import { ruleOf } from "./words";
import type { Worn } from "./worn";

/** As it was last told after a set on that side; null where it was not. */
export function toldAfter(session: Session, set: string, side: Side | null): number | null {
  const done = session.record.sets.get(set)?.firsts.get(side);
  if (done === undefined) return null;
  const told = session.entries.flatMap(({ entry }) =>
    is(entry, "wrap.check") && entry.set === set && entry.id > done ? [entry.body.tightness] : [],
  );
  return told.findLast((tightness) => tightness !== undefined) ?? null;
}

export interface Due {
  /** The set after which it is asked. */
  readonly after: string;
  readonly most: number;
  /** It was told, and is over the limit. */
  readonly was: number | null;
}

/** A wrap slips and a limb swells: asked once after each set, and again as long as it is too tight. */
export function tightnessDue({ wrap, session, exercise, side, open }: Worn): Due | null {
  if (!session || !exercise || open.length === 0) return null;
  if (ruleOf(exercise)?.restriction !== "wrap") return null;
  const last = exercise.sets.findLast(({ key }) => {
    const record = session.record.sets.get(key);
    const answer = side ? record?.sides.get(side) : record?.entry;
    return answer?.kind === "set.done" && (record?.firsts.get(side) ?? "") > wrap.id;
  });
  if (!last) return null;
  const was = toldAfter(session, last.key, side);
  const most = exercise.occlusion?.most_tightness ?? 10;
  return was === null || was > most ? { after: last.key, most, was } : null;
}
