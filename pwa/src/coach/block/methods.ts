/** The methods of an exercise: their names, and what changes when another one is chosen. */
import type { ExercisePlan, Method, SetPlan } from "../../api/types";

export const METHOD_NAMES: Readonly<Record<Method, string>> = {
  straight: "Straight sets",
  "top-and-back-off": "Top set and back-offs",
  speed: "Speed sets",
  hold: "Holds",
  tempo: "Tempo",
  occlusion: "Occlusion",
  "unstable-bar": "Unstable bar",
  "one-sided": "One side at a time",
  cluster: "Clusters",
  "maximum-test": "Maximum test",
  timed: "Time or distance",
  "warm-up": "Warm-up",
};

type Details = NonNullable<ExercisePlan["details"]>;

const FIRST_DETAILS: Partial<Readonly<Record<Method, Details>>> = {
  speed: { stop_at_loss_percent: 10, stop_at_quality: 2 },
  hold: { position: 0 },
  tempo: { lowering_s: 3, pause_low_s: 1, lifting_s: 1, pause_high_s: 0 },
  occlusion: { limb: "thigh", restriction: "wrap" },
  "unstable-bar": { hanging: true },
  "one-sided": { first: "left" },
  cluster: { block_rest_s: 15 },
  "maximum-test": { reps: 1, attempts: 4 },
};

/** A hold whose seconds count for each repetition, so that a set says how many. */
export function isHeldEachRep({ method, details }: ExercisePlan): boolean {
  return method === "hold" && details !== undefined && "per_rep" in details && !!details.per_rep;
}

/** The exercise with another method: that method's details, and sets that say what it needs. */
export function withMethod(plan: ExercisePlan, method: Method): ExercisePlan {
  if (plan.method === method) return plan;
  const { details: _, ...rest } = plan;
  const details = FIRST_DETAILS[method];
  const sets = plan.sets.map((set) => fitted(set, method));
  return { ...rest, method, sets, ...(details ? { details } : {}) };
}

function fitted(set: SetPlan, method: Method): SetPlan {
  const { seconds, distance_m, blocks, ...rest } = set;
  switch (method) {
    case "hold": {
      const { reps: _, ...held } = rest;
      return { ...held, seconds: seconds ?? 10 };
    }
    case "timed": {
      const { reps: _, ...timed } = rest;
      return distance_m === undefined
        ? { ...timed, seconds: seconds ?? 30 }
        : { ...timed, distance_m };
    }
    case "cluster": {
      const { reps: _, ...clustered } = rest;
      return { ...clustered, blocks: blocks ?? [2, 2, 2] };
    }
    default:
      return { ...rest, reps: rest.reps ?? 5 };
  }
}
