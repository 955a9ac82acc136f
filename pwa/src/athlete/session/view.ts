/** What the Set screen shows, worked out from the session and the step at hand. */
import type { SheetExercise, SheetSet } from "../../api/types";
import { is, type SetDone, type Side, SIDES } from "../../offline/entry";
import { type Answer, answerKey, type SetRecord } from "../../offline/fold";
import { type Placed, type Session, steadyOf } from "../../offline/ledger-view";
import {
  asDone,
  exercisesOf,
  isAnswered,
  nextStep,
  openSteps,
  type Step,
} from "../../offline/plan";
import { loadOf } from "../../offline/stacks";
import type { AtHand } from "./at-hand";

export interface SessionView {
  readonly session: Session;
  readonly exercises: readonly SheetExercise[];
  readonly open: readonly Step[];
  readonly next: Step | null;
  /** The last set that was done or skipped, in the order of the taps. */
  readonly last: LastSet | null;
  /** Every set that was done or skipped, in that order. */
  readonly answered: readonly LastSet[];
  /** The last set that was done: rest counts from it, once it is done on both sides; with a wrap on, limb by limb. */
  readonly rested: LastSet | null;
}

export interface LastSet {
  readonly exercise: SheetExercise;
  readonly set: SheetSet;
  readonly side: Side | null;
  readonly entry: Answer;
  /** When it was first recorded, on the steady clock: a later correction does not move it. */
  readonly doneAt: number;
}

export function viewSession(session: Session, chosen: string | null): SessionView {
  const exercises = exercisesOf(session.sheet, session.record);
  const progress = { sets: session.record.sets, ramp: session.ramp };
  const answered = answeredSets(exercises, session);
  return {
    session,
    exercises,
    open: openSteps(exercises, progress),
    next: nextStep(exercises, progress, chosen ?? resumed(exercises, session, answered)),
    answered,
    last: answered.at(-1) ?? null,
    rested: restedOf(answered, session),
  };
}

/**
 * After a reload, what the athlete was at: the exercise whose clock runs, else that of the last set, or the
 * one whose turn it is in its round.
 */
function resumed(
  exercises: readonly SheetExercise[],
  { running, record, ramp }: Session,
  answered: readonly LastSet[],
): string | null {
  const runs = ({ sets }: SheetExercise) =>
    sets.some(({ key }) => [null, ...SIDES].some((side) => running[answerKey(key, side)]));
  const last = answered.at(-1)?.exercise;
  const partners = exercises.filter(
    ({ key, group }) => key === last?.key || (group && group === last?.group),
  );
  const turn = nextStep(partners, { sets: record.sets, ramp })?.exercise;
  return exercises.find(runs)?.key ?? turn ?? null;
}

function restedOf(answered: readonly LastSet[], { record }: Session): LastSet | null {
  const last = answered.findLast(({ entry }) => is(entry, "set.done"));
  if (last?.exercise.method === "occlusion") return isLastOfLimb(last, record) ? null : last;
  return last && isAnswered(last.exercise, record.sets.get(last.set.key)) ? last : null;
}

/** Then wraps come off, and what follows is a break and no rest. */
function isLastOfLimb({ exercise, side }: LastSet, { sets }: Session["record"]): boolean {
  return exercise.sets.every(({ key }) => {
    const told = sets.get(key);
    return told && (!side || told.sides.size === 0 || told.sides.has(side));
  });
}

/** In the order in which they were first answered. */
function answeredSets(exercises: readonly SheetExercise[], session: Session): LastSet[] {
  const found = exercises.flatMap((exercise) =>
    exercise.sets.flatMap((set) => {
      const record = session.record.sets.get(set.key);
      return answersOf(record).map(([side, entry]) => {
        const first = firstAnswer(session.entries, entry);
        const order = first.entry.id;
        const done = asDone(session.sheet, session.record, exercise.key, order) ?? exercise;
        return { exercise: done, set, side, entry, doneAt: steadyOf(first), order };
      });
    }),
  );
  return found.sort((one, other) => (one.order < other.order ? -1 : 1));
}

/** One for each side, or one for the whole set. */
export function answersOf(record: SetRecord | undefined): [Side | null, Answer][] {
  if (!record) return [];
  return record.sides.size > 0 ? [...record.sides] : [[null, record.entry]];
}

/** Back along the corrections, but not across a clearing: after that the set was done anew. */
function firstAnswer(entries: Session["entries"], last: Answer): Placed {
  const placed = (id: string | null) => entries.find(({ entry }) => entry.id === id);
  let first = placed(last.id) ?? { entry: last, position: null };
  for (;;) {
    const before = placed(first.entry.replaces);
    if (!before || before.entry.kind === "set.cleared" || before.entry.id >= first.entry.id)
      return first;
    first = before;
  }
}

/** What hangs on the bar, as far as it is known. */
export interface Hanging {
  readonly side: readonly number[];
  readonly known: boolean;
}

const BARE: Hanging = { side: [], known: false };

/**
 * What hangs on the piece of the kit that an exercise uses, after every warm-up and set that was done with
 * it so far. The same choice among equal loads as the load card made, made again.
 */
export function hangingBefore(view: SessionView, exercise: SheetExercise, step: Step): Hanging {
  const { answered, session } = view;
  let hanging = BARE;
  const warmed = new Set<string>();
  for (const done of answered) {
    if (!samePiece(done.exercise, exercise)) continue;
    if (!warmed.has(done.exercise.key)) hanging = warmUp(done.exercise, session) ?? hanging;
    warmed.add(done.exercise.key);
    hanging = afterSet(done, session, hanging);
  }
  if (warmed.has(exercise.key)) return hanging;
  return warmUp(exercise, session, step.kind === "ramp" ? step.ramp : undefined) ?? hanging;
}

function warmUp(exercise: SheetExercise, session: Session, done?: number): Hanging | null {
  const ramp = exercise.ramp?.[(done ?? session.ramp[exercise.key] ?? 0) - 1];
  return ramp ? { side: exercise.loads?.[ramp.load]?.side ?? [], known: true } : null;
}

function afterSet({ exercise, set, entry }: LastSet, session: Session, hanging: Hanging): Hanging {
  if (!is(entry, "set.done") || typeof entry.body.load_kg !== "number") return hanging;
  const loads = exercise.loads ?? [];
  const planned = plannedLoad(exercise, set, session);
  const index = loadOf(loads, entry.body.load_kg, hanging.side, planned);
  return index === null ? hanging : { side: loads[index]?.side ?? [], known: true };
}

export function samePiece(one: SheetExercise, other: SheetExercise): boolean {
  const { key, kind, sides } = one.implement;
  if (one.key === other.key && kind === other.implement.kind) return true;
  return key !== undefined && key === other.implement.key && sides === other.implement.sides;
}

/** The index of the planned load: a back-off follows from what the first set was done with. */
export function plannedLoad(
  exercise: SheetExercise,
  set: SheetSet,
  session: Session,
): number | null {
  const first = exercise.sets[0];
  const done = first && session.record.sets.get(first.key)?.entry;
  const after = set.after ?? [];
  if (done && is(done, "set.done") && after.length > 0 && typeof done.body.load_kg === "number") {
    const index = loadOf(exercise.loads ?? [], done.body.load_kg, [], first.load ?? null);
    const follows = index === null ? undefined : after[index];
    if (follows !== undefined) return follows;
  }
  return set.load ?? null;
}

/** What is filled in before anything was tapped: the plan, or what was recorded before. */
export function prefilled(here: AtHand, planned: number | null): SetDone {
  const { view, exercise, set, side, record, answer, key } = here;
  if (answer && is(answer, "set.done")) return answer.body;
  const running = view.session.running[key];
  if (running) return running.done;
  const load = planned === null ? undefined : exercise.loads?.[planned];
  const asPlanned = askedFor(set, load?.kg ?? null);
  if (!side) return asPlanned;
  const other = [...(record?.sides.values() ?? [])].find((each) => is(each, "set.done"));
  const load_kg = other && is(other, "set.done") ? other.body.load_kg : asPlanned.load_kg;
  return { ...asPlanned, load_kg, side };
}

function askedFor({ target }: SheetSet, load_kg: number | null): SetDone {
  return {
    load_kg,
    reps: target.reps ?? total(target.blocks) ?? null,
    rir: target.to_failure ? 0 : (target.rir ?? null),
    ...(target.to_failure && { to_failure: true }),
    ...(target.seconds && { seconds: target.seconds }),
    ...(target.distance_m && { distance_m: target.distance_m }),
    ...(target.blocks && target.blocks.length > 0 && { blocks: target.blocks }),
  };
}

function total(blocks: readonly number[] | undefined): number | undefined {
  return blocks && blocks.length > 0 ? blocks.reduce((sum, one) => sum + one, 0) : undefined;
}
