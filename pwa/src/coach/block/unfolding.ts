/** What a coach chooses when a week is unfolded, and the question to the server that it becomes. */
import type {
  Block,
  ExercisePlan,
  LightWeek,
  Progression,
  SessionPlan,
  Week,
} from "../../api/types";
import type { Fault } from "../../api/client";
import { within } from "./faults";
import { firstRule, fits, REPEAT, type RuleName } from "./progressions";

export interface Choices {
  /** How many weeks in all, the first among them. */
  readonly weeks: number;
  readonly lightWeek: LightWeek | null;
  /** Weeks that were unfolded before are made again, in place of what became of them. */
  readonly anew: boolean;
  /** Chosen here, by `nameOf` the exercise; the others go by the rule that they have. */
  readonly rules: Readonly<Record<string, Progression>>;
}

export interface RuleAsked {
  readonly session: string;
  readonly exercise: string;
  readonly progression: Progression;
}

export const LIGHT_WEEK: LightWeek = { every: 4, factor: 0.6 };

const USUAL_WEEKS = 4;

export function firstChoices(block: Block, week: Week): Choices {
  const before = unfoldedFrom(block, week).length;
  return { weeks: before > 0 ? before + 1 : USUAL_WEEKS, lightWeek: null, anew: true, rules: {} };
}

/** The weeks that were unfolded from this one before: their keys say so. */
export function unfoldedFrom(block: Block, week: Week): Week[] {
  const stem = `${week.key}.w`;
  return block.weeks.filter(
    ({ key }) => key.startsWith(stem) && /^\d+$/.test(key.slice(stem.length)),
  );
}

/** The next week that stays behind the new ones; empty weeks give up their place. */
export function followedBy(block: Block, week: Week): Week | undefined {
  const before = new Set([week, ...unfoldedFrom(block, week)]);
  const last = block.weeks.findLastIndex((each) => before.has(each));
  return block.weeks.slice(last + 1).find((each) => each.sessions.length > 0);
}

export function nameOf(session: SessionPlan, plan: ExercisePlan): string {
  return `${session.key} ${plan.key}`;
}

/** The rule by which an exercise will go. */
export function ruleOf(choices: Choices, session: SessionPlan, plan: ExercisePlan): Progression {
  return choices.rules[nameOf(session, plan)] ?? plan.progression ?? REPEAT;
}

export function withRule(choices: Choices, name: string, rule: Progression): Choices {
  return { ...choices, rules: { ...choices.rules, [name]: rule } };
}

/** The same rule, as it begins, for every exercise of the week that it fits. */
export function withRuleForAll(choices: Choices, week: Week, name: RuleName): Choices {
  const fitting = exercisesOf(week).filter(({ plan }) => fits(name, plan));
  const rules = fitting.map(({ session, plan }) => [nameOf(session, plan), firstRule(name, plan)]);
  return { ...choices, rules: { ...choices.rules, ...Object.fromEntries(rules) } };
}

/** The rules that were chosen here, for exercises that the week still has. */
export function rulesAsked(week: Week, choices: Choices): RuleAsked[] {
  return exercisesOf(week).flatMap(({ session, plan }) => {
    const progression = choices.rules[nameOf(session, plan)];
    return progression ? [{ session: session.key, exercise: plan.key, progression }] : [];
  });
}

/** Faults of one exercise's rule: as the draft's, by its path, or as the question's, by its number. */
export function ruleFaults(
  faults: readonly Fault[],
  path: string,
  asked: readonly RuleAsked[],
  { session, exercise }: Pick<RuleAsked, "session" | "exercise">,
): Fault[] {
  const at = asked.findIndex((each) => each.session === session && each.exercise === exercise);
  return [
    ...within(faults, `${path}.progression`),
    ...(at < 0 ? [] : within(faults, `rules.${at}`)),
  ];
}

function exercisesOf(week: Week): { session: SessionPlan; plan: ExercisePlan }[] {
  return week.sessions.flatMap((session) => session.exercises.map((plan) => ({ session, plan })));
}
