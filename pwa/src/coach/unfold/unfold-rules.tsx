import type { Fault } from "../../api/client";
import type { ExercisePlan, SessionPlan, Week } from "../../api/types";
import { pathOf } from "../block/places";
import { linesOf } from "../block/lines";
import { firstRule, RULE_NAMES, rulesFor, type RuleName } from "../block/progressions";
import {
  nameOf,
  ruleFaults,
  ruleOf,
  rulesAsked,
  withRule,
  withRuleForAll,
  type Choices,
} from "../block/unfolding";
import { lineInWords } from "../block/wish-words";
import { ChoiceField } from "../fields/choice-field";
import { useDesk } from "../shell/desk-state";
import { FaultList } from "../shell/states";
import { dayName } from "../shell/when";
import { RuleFields } from "./rule-fields";

interface RulesProps {
  readonly week: Week;
  /** The place of the week in the block. */
  readonly at: number;
  readonly choices: Choices;
  readonly onChoices: (choices: Choices) => void;
  readonly faults: readonly Fault[];
}

/** A rule for each exercise of the week, in the order of the sessions. */
export function UnfoldRules(props: RulesProps) {
  const { week } = props;
  return (
    <div class="unfold-rules">
      {week.sessions.map((session, place) => (
        <section key={session.key}>
          <h3>
            {dayName(session.day)} · {session.name}
          </h3>
          <ul class="plain-list">
            {session.exercises.map((plan, exercise) => (
              <RuleRow
                {...props}
                key={plan.key}
                session={session}
                plan={plan}
                path={pathOf({ week: props.at, session: place, exercise })}
              />
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}

interface RuleRowProps extends RulesProps {
  readonly session: SessionPlan;
  readonly plan: ExercisePlan;
  readonly path: string;
}

function RuleRow({ week, choices, onChoices, faults, session, plan, path }: RuleRowProps) {
  const exercises = useDesk().exercises.value;
  const name = exercises.find((each) => each.key === plan.exercise)?.name ?? plan.exercise;
  const rule = ruleOf(choices, session, plan);
  const own = nameOf(session, plan);
  const place = { session: session.key, exercise: plan.key };
  return (
    <li>
      <div role="group" aria-label={`${name}, ${dayName(session.day)}`}>
        <span class="unfold-name">
          <b>{name}</b>
          <span class="soft">{linesInWords(plan)}</span>
        </span>
        <ChoiceField<RuleName>
          label="Rule"
          quiet
          choices={rulesFor(plan, rule.rule) as Record<RuleName, string>}
          value={rule.rule}
          onValue={(next) => onChoices(withRule(choices, own, firstRule(next, plan)))}
        />
        <RuleFields rule={rule} onRule={(next) => onChoices(withRule(choices, own, next))} />
        <FaultList faults={ruleFaults(faults, path, rulesAsked(week, choices), place)} at={path} />
      </div>
    </li>
  );
}

function linesInWords(plan: ExercisePlan): string {
  return linesOf(plan.sets, new Set())
    .map((line) => lineInWords(line.sets.length, line.asks))
    .join("; ");
}

type ForAllProps = Pick<RulesProps, "week" | "choices" | "onChoices">;

/** One rule for every exercise that it fits, to begin with. */
export function RuleForAll({ week, choices, onChoices }: ForAllProps) {
  return (
    <ChoiceField<RuleName | "">
      label="One rule for all that it fits"
      choices={{ "": "choose …", ...RULE_NAMES }}
      value=""
      onValue={(name) => name && onChoices(withRuleForAll(choices, week, name))}
    />
  );
}
