/** A session as the athlete does it: its sheet with swaps and added sets, and in which order. */
import type { LoadSheet, SheetExercise, SheetSet } from "../api/types";
import { type Side, SIDES } from "./entry";
import type { SessionRecord, SetRecord } from "./fold";
import { grouped } from "./grouped";

/** Either a warm-up set or a work set, by its exercise's key. */
export type Step =
  | { readonly kind: "ramp"; readonly exercise: string; readonly ramp: number }
  | { readonly kind: "set"; readonly exercise: string; readonly set: string };

export type Changes = Pick<SessionRecord, "added" | "swaps">;

/** The sheet's exercises with what the athlete has swapped and added. */
export function exercisesOf(sheet: LoadSheet, changes: Changes): SheetExercise[] {
  return sheet.exercises.map((exercise) => {
    const to = changes.swaps.get(exercise.key);
    return withAdded(to === undefined ? exercise : swapped(exercise, to), changes.added);
  });
}

type Alternative = NonNullable<SheetExercise["alternatives"]>[number];

/** What a swap to it is called. */
export function swapKey({ key, exercise }: Alternative): string {
  return key ? key : exercise;
}

/** The exercise as one of its sets was done: a swap counts for what is recorded after it. */
export function asDone(
  sheet: Pick<LoadSheet, "exercises">,
  record: SessionRecord,
  line: string,
  first: string,
): SheetExercise | undefined {
  const planned = sheet.exercises.find(({ key }) => key === line);
  const to = (record.swapped.get(line) ?? []).findLast(({ id }) => id < first)?.body.to;
  return planned && withAdded(to === undefined ? planned : swapped(planned, to), record.added);
}

/** The exercise done another way; its loads come from the sheet, made by the server in advance. */
export function swapped(exercise: SheetExercise, to: string): SheetExercise {
  const other = exercise.alternatives?.find((each) => swapKey(each) === to);
  if (!other) return exercise;
  const { key, method, rest, group, details, locked, alternatives } = exercise;
  const { uses, ramp, rig, cue, notes, cautions } = other;
  return {
    key,
    method,
    ...(rest && { rest }),
    ...(group && { group }),
    ...(details && { details }),
    ...(locked && { locked }),
    ...(alternatives && { alternatives }),
    ...(uses && { uses }),
    ...(ramp && { ramp }),
    ...(rig && { rig }),
    ...(cue && { cue }),
    ...(notes && { notes }),
    ...(cautions && { cautions }),
    exercise: other.exercise,
    name: other.name,
    implement: other.implement,
    loads: other.loads,
    sets: exercise.sets.map(({ key: set, number, target }, index) => {
      const load = other.sets[index];
      return { key: set, number, target, ...(typeof load === "number" && { load }) };
    }),
  };
}

/** Added sets are like the last one of the plan. */
function withAdded(exercise: SheetExercise, added: Changes["added"]): SheetExercise {
  const last = exercise.sets.at(-1);
  const keys = [...added].filter(([, to]) => to === exercise.key).map(([key]) => key);
  if (!last || keys.length === 0) return exercise;
  const more = keys.sort().map((key, index): SheetSet => {
    const turn = last.turn === undefined ? {} : { turn: BEYOND_THE_PLAN };
    return { ...last, key, number: last.number + 1 + index, ...turn };
  });
  return { ...exercise, sets: [...exercise.sets, ...more] };
}

const BEYOND_THE_PLAN = 1_000;

/** Every step in order; exercises that share a group are done in rounds. */
export function stepsOf(exercises: readonly SheetExercise[]): Step[] {
  const rounds = grouped(exercises, (exercise) => exercise.group ?? `alone ${exercise.key}`);
  return [...rounds.values()].flatMap(stepsOfGroup);
}

function stepsOfGroup(exercises: readonly SheetExercise[]): Step[] {
  const ramps = exercises.flatMap(({ key, ramp = [] }) =>
    ramp.map((_, index): Step => ({ kind: "ramp", exercise: key, ramp: index })),
  );
  const longest = Math.max(...exercises.map(({ sets }) => sets.length));
  const sets = Array.from({ length: longest }, (_, round) =>
    exercises.flatMap(({ key, sets: own }): Step[] => {
      const set = own[round];
      return set ? [{ kind: "set", exercise: key, set: set.key }] : [];
    }),
  );
  return [...ramps, ...sets.flat()];
}

type Told = Pick<SetRecord, "sides">;

export interface Progress {
  readonly sets: ReadonlyMap<string, Told>;
  /** Warm-up sets done, by exercise. */
  readonly ramp: Readonly<Record<string, number>>;
}

/** The sides of a one-sided set that are open, in the coach's order; none where it is told at once. */
export function openSides(exercise: SheetExercise, told: Told | undefined): Side[] {
  const { details } = exercise;
  if (!isSided(exercise) || (told && told.sides.size === 0)) return [];
  const first = details && "first" in details ? details.first : SIDES[0];
  const order = first === "right" ? SIDES.toReversed() : [...SIDES];
  return order.filter((side) => !told?.sides.has(side));
}

/** One side after the other; with a wrap on, one limb after the other. */
export function isSided({ method, details }: SheetExercise): boolean {
  if (method === "one-sided") return true;
  return details !== undefined && "both_at_once" in details && details.both_at_once === false;
}

/** Done or skipped, on both sides where it has two. */
export function isAnswered(exercise: SheetExercise, told: Told | undefined): boolean {
  return told !== undefined && openSides(exercise, told).length === 0;
}

/** Neither done nor skipped. A warm-up is past once a work set of its exercise has been done. */
export function openSteps(exercises: readonly SheetExercise[], progress: Progress): Step[] {
  const begun = new Set(
    exercises
      .filter(({ sets }) => sets.some((set) => progress.sets.has(set.key)))
      .map(({ key }) => key),
  );
  const byKey = new Map(exercises.map((exercise) => [exercise.key, exercise]));
  return stepsOf(exercises).filter((step) => {
    const exercise = byKey.get(step.exercise);
    if (!exercise || exercise.locked) return false;
    if (step.kind === "set") return !isAnswered(exercise, progress.sets.get(step.set));
    return !begun.has(step.exercise) && step.ramp >= (progress.ramp[step.exercise] ?? 0);
  });
}

/**
 * What comes next; an exercise that the athlete chose goes first as long as it has open steps, and in its group
 * the round is done to its end.
 */
export function nextStep(
  exercises: readonly SheetExercise[],
  progress: Progress,
  chosen: string | null = null,
): Step | null {
  const open = openSteps(exercises, progress);
  const wanted = open.find((step) => step.exercise === chosen) ?? open[0];
  if (!wanted) return null;
  const group = exercises.find(({ key }) => key === wanted.exercise)?.group;
  const round = roundOf(exercises, wanted);
  const partners = exercises.filter((each) => group && each.group === group);
  const due = open.find(
    (step) => partners.some(({ key }) => key === step.exercise) && roundOf(exercises, step) < round,
  );
  return due ?? wanted;
}

/** From 0; warm-ups belong to the first. */
function roundOf(exercises: readonly SheetExercise[], step: Step): number {
  if (step.kind === "ramp") return 0;
  const sets = exercises.find(({ key }) => key === step.exercise)?.sets ?? [];
  return sets.findIndex(({ key }) => key === step.set);
}
