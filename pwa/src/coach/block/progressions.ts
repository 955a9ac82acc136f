/** Rules of progression: their names, what they begin with, and which exercises they fit. */
import type { ExercisePlan, LoadWish, Progression, SetPlan } from "../../api/types";
import { figure, signed } from "./wish-words";

export type RuleName = Progression["rule"];
export type RuleOf<Name extends RuleName> = Extract<Progression, { rule: Name }>;

export const RULE_NAMES: Readonly<Record<RuleName, string>> = {
  repeat: "repeat",
  "add-kg": "add kilograms",
  "add-percent": "add per cent",
  "percent-by-week": "percentages by week",
  wave: "wave",
  double: "repetitions, then load",
  "falling-reserve": "reserve by week",
  "rising-sets": "sets by week",
  "light-week": "light week",
  "test-week": "test week",
};

export const REPEAT: Progression = { rule: "repeat" };

/** The bases of a load that a rule moves; a rule that is not listed fits every exercise. */
const MOVES: Partial<Readonly<Record<RuleName, readonly LoadWish["basis"][]>>> = {
  "add-kg": ["kg", "last", "body"],
  double: ["kg", "last", "body"],
  "add-percent": ["percent", "kg"],
  "percent-by-week": ["percent"],
  wave: ["percent"],
};

export function fits(name: RuleName, plan: ExercisePlan): boolean {
  const bases = MOVES[name];
  return bases === undefined || plan.sets.some((set) => bases.includes(set.load.basis));
}

/** The rules to choose from for an exercise: those that fit it, and the one that it has. */
export function rulesFor(plan: ExercisePlan, now: RuleName): Partial<Record<RuleName, string>> {
  const names = Object.keys(RULE_NAMES) as RuleName[];
  const open = names.filter((name) => name === now || fits(name, plan));
  return Object.fromEntries(open.map((name) => [name, RULE_NAMES[name]]));
}

/** A rule as it begins when it is chosen: from what the exercise says, in usual steps. */
export function firstRule(name: RuleName, plan: ExercisePlan): Progression {
  const heaviest = Math.max(...plan.sets.map(percentOf), 0) || 70;
  switch (name) {
    case "add-kg":
      return { rule: name, kg: 2.5 };
    case "add-percent":
      return { rule: name, percent: 2.5 };
    case "percent-by-week":
      return { rule: name, percents: steps(heaviest, 4) };
    case "wave":
      return { rule: name, percents: steps(heaviest, 3), step_percent: 2.5 };
    case "double":
      return { rule: name, ...firstReps(plan), add_kg: 2.5 };
    case "falling-reserve":
      return { rule: name, rirs: [3, 2, 1] };
    case "rising-sets":
      return { rule: name, sets: [0, 1, 2].map((more) => plan.sets.length + more) };
    case "light-week":
      return { rule: name, every: 4, factor: 0.6 };
    case "test-week":
      return { rule: name, every: 4 };
    case "repeat":
      return REPEAT;
  }
}

/** So many percentages from the first one on, each 2.5 higher. */
function steps(first: number, count: number): number[] {
  return Array.from({ length: count }, (_, step) => first + 2.5 * step);
}

function percentOf({ load }: SetPlan): number {
  return load.basis === "percent" ? load.percent : 0;
}

function firstReps(plan: ExercisePlan): { reps_from: number; reps_to: number } {
  const from = plan.sets[0]?.reps ?? 8;
  return { reps_from: from, reps_to: from + 2 };
}

/** "+2.5 kg a week", "wave of 70, 75, 80 %". */
export function ruleInWords(rule: Progression): string {
  switch (rule.rule) {
    case "add-kg":
      return `${signed(rule.kg)} kg a week`;
    case "add-percent":
      return `${signed(rule.percent)} % a week`;
    case "percent-by-week":
      return `${listed(rule.percents)} % by week`;
    case "wave":
      return `wave of ${listed(rule.percents)} %`;
    case "double":
      return `${rule.reps_from} to ${rule.reps_to} reps, then ${signed(rule.add_kg)} kg`;
    case "falling-reserve":
      return `${listed(rule.rirs)} in reserve by week`;
    case "rising-sets":
      return `${listed(rule.sets)} sets by week`;
    case "light-week":
      return `every ${rule.every} weeks at ${figure(rule.factor * 100)} %`;
    case "test-week":
      return `a test every ${rule.every} weeks`;
    case "repeat":
      return "the same every week";
  }
}

function listed(values: readonly number[]): string {
  return values.map(figure).join(", ");
}
