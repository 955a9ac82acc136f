/** Patterns of occlusion sets, as the server knows them, put into an exercise and found in it again. */
import type { ExercisePlan, LoadWish, SetPlan } from "../../api/types";
import type { OcclusionPattern } from "../answers";
import { freshKey, type Random } from "./keys";

type Rule = Extract<NonNullable<ExercisePlan["details"]>, { readonly limb?: unknown }>;

/** The exercise with the sets, rests, load and sides of the pattern; sets keep the keys they have. */
export function withPattern(
  plan: ExercisePlan,
  pattern: OcclusionPattern,
  taken: ReadonlySet<string>,
  random: Random,
): ExercisePlan {
  const keys = new Set(taken);
  const load = loadOf(plan, pattern);
  const sets = pattern.sets.map(({ reps, to_failure }, place): SetPlan => {
    const key = plan.sets[place]?.key ?? freshKey(keys, random);
    keys.add(key);
    return { key, reps, load, ...(to_failure ? { to_failure } : {}) };
  });
  const [from_s = 0, to_s = from_s] = pattern.rest_s;
  return { ...plan, sets, rest: { from_s, to_s }, details: ruleOf(plan.details as Rule, pattern) };
}

/** The pattern whose repetitions the exercise has; undefined where the coach wrote others. */
export function patternOf(
  plan: ExercisePlan,
  patterns: readonly OcclusionPattern[],
): OcclusionPattern | undefined {
  return patterns.find(
    ({ sets }) =>
      sets.length === plan.sets.length &&
      sets.every(({ reps, to_failure }, place) => {
        const own = plan.sets[place];
        return own?.reps === reps && (own.to_failure ?? false) === to_failure;
      }),
  );
}

/** A share of the maximum that the exercise already goes by; else of its own. */
function loadOf(plan: ExercisePlan, { load_percent }: OcclusionPattern): LoadWish {
  const known = plan.sets[0]?.load;
  const wish = known?.basis === "percent" ? known : { basis: "percent" as const };
  return { ...wish, percent: load_percent };
}

/** A pattern can only loosen a wrap, and only part limbs. */
function ruleOf(rule: Rule, { most_tightness, both_at_once }: OcclusionPattern): Rule {
  const loosened =
    rule.restriction === "wrap" && most_tightness !== null
      ? { tightness: Math.min(rule.tightness ?? most_tightness, most_tightness) }
      : {};
  return { ...rule, ...loosened, ...(both_at_once ? {} : { both_at_once }) };
}
