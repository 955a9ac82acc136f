/** Adding, copying, ordering and removing the exercises of a session. */
import type { Block, ExercisePlan, Implement, LoadWish, SessionPlan } from "../../api/types";
import { freshKey, type Random } from "./keys";
import { inserted, moved, without } from "./lists";
import { withSession, type ExerciseAt, type SessionAt } from "./places";

/** What the writer has to know of an exercise to begin with it. */
export interface Picked {
  readonly key: string;
  readonly implement: Implement;
  readonly one_sided: boolean;
}

const FIRST_SETS = 3;
const FIRST_REPS = 8;

export function addExercise(block: Block, at: SessionAt, picked: Picked, random: Random): Block {
  const set = { key: "", reps: FIRST_REPS, load: firstWish(picked.implement) };
  const plan: ExercisePlan = {
    key: "",
    exercise: picked.key,
    ...(picked.one_sided
      ? { method: "one-sided", details: { first: "left" } }
      : { method: "straight" }),
    sets: Array.from({ length: FIRST_SETS }, () => set),
  };
  return putExercise(block, at, plan, Number.POSITIVE_INFINITY, random);
}

/** Puts a copy of an exercise into a session; it and its sets take keys of their own. */
export function putExercise(
  block: Block,
  at: SessionAt,
  plan: ExercisePlan,
  place: number,
  random: Random,
): Block {
  return withSession(block, at, (session) => {
    const key = freshKey(new Set(session.exercises.map((each) => each.key)), random);
    const taken = setKeys(session);
    const sets = plan.sets.map((set) => {
      const own = freshKey(taken, random);
      taken.add(own);
      return { ...set, key: own };
    });
    return { ...session, exercises: inserted(session.exercises, place, { ...plan, key, sets }) };
  });
}

export function moveExercise(block: Block, at: ExerciseAt, to: number): Block {
  return withSession(block, at, (session) => ({
    ...session,
    exercises: moved(session.exercises, at.exercise, to),
  }));
}

export function removeExercise(block: Block, at: ExerciseAt): Block {
  return withSession(block, at, (session) => ({
    ...session,
    exercises: without(session.exercises, at.exercise),
  }));
}

export function setKeys(session: SessionPlan): Set<string> {
  return new Set(session.exercises.flatMap((each) => each.sets.map((set) => set.key)));
}

/** A wish that can be met before any maximum is known. */
function firstWish(implement: Implement): LoadWish {
  if (implement === "body") return { basis: "body" };
  return implement === "band" ? { basis: "none" } : { basis: "rir", rir: 3 };
}
