/** Small invented blocks for the tests. */
import type { Block, ExercisePlan, SessionPlan, SetPlan } from "../../api/types";
import type { Shelf } from "../shell/kept";
import type { Random } from "./keys";

/** Numbers that look random and are the same in every run. */
export function dice(seed = 1): Random {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

export function set(key: string, reps: number, percent: number): SetPlan {
  return { key, reps, load: { basis: "percent", percent } };
}

export function exercise(key: string, sets: readonly SetPlan[]): ExercisePlan {
  return { key, exercise: "deadlift", method: "straight", sets: [...sets] };
}

export function session(key: string, day: number, exercises: readonly ExercisePlan[]): SessionPlan {
  return { key, name: `Session ${key}`, day, exercises: [...exercises] };
}

/** Two weeks, the second empty; the first has a Monday and a Thursday. */
export function twoWeeks(): Block {
  const monday = session("mon", 1, [
    exercise("pull", [set("s1", 3, 80), set("s2", 3, 80), set("s3", 5, 70)]),
    exercise("press", [set("s4", 5, 75)]),
  ]);
  const thursday = session("thu", 4, [exercise("pull", [set("s1", 5, 70)])]);
  return {
    key: "winter",
    name: "Winter in the valley",
    weeks: [
      { key: "w1", name: "Week 1", sessions: [monday, thursday] },
      { key: "w2", name: "Week 2", sessions: [] },
    ],
  };
}

/** A browser's storage that has no room left. */
export function fullShelf(): Shelf {
  return {
    length: 0,
    key: () => null,
    getItem: () => null,
    removeItem: () => {},
    setItem: () => {
      throw new DOMException("full", "QuotaExceededError");
    },
  };
}
