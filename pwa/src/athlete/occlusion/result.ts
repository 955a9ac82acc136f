/** The result of an occlusion set before it is tapped, and the load that goes with it. */
import type { SheetLoad } from "../../api/types";
import { is, type SetDone, type Side } from "../../offline/entry";
import { loadOf } from "../../offline/stacks";
import type { AtHand } from "../session/at-hand";
import { hangingBefore, plannedLoad, prefilled } from "../session/view";

/** As planned; the load and the tightness are those of the set before it. */
export function filledIn(here: AtHand, side: Side | null): SetDone {
  const { view, exercise, set } = here;
  const done = prefilled(here, plannedLoad(exercise, set, view.session));
  const before = view.answered.findLast(
    (one) => one.exercise.key === exercise.key && is(one.entry, "set.done"),
  );
  const last = before && is(before.entry, "set.done") ? before.entry.body : null;
  const begun = view.session.running[here.key] !== undefined;
  if (!last || begun) return { ...done, ...(side && { side }) };
  const same = before?.side === side && last.tightness !== undefined;
  return {
    ...done,
    load_kg: last.load_kg,
    ...(side && { side }),
    ...(same && { tightness: last.tightness }),
  };
}

interface Choice {
  readonly load: SheetLoad | null;
  /** What may be chosen: nothing beyond the cap. */
  readonly loads: readonly SheetLoad[];
}

export function choiceOf({ view, exercise, set }: AtHand, { load_kg }: SetDone): Choice {
  const all = exercise.loads ?? [];
  const loads = set.cap === undefined ? all : all.slice(0, set.cap + 1);
  if (load_kg === null) return { load: null, loads };
  const step = { kind: "set", exercise: exercise.key, set: set.key } as const;
  const planned = plannedLoad(exercise, set, view.session);
  const index = loadOf(all, load_kg, hangingBefore(view, exercise, step).side, planned);
  return { load: index === null ? null : (all[index] ?? null), loads };
}
