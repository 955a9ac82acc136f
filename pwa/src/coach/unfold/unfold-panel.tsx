import { useEffect, useRef } from "preact/hooks";

import { Refused, type Fault } from "../../api/client";
import type { Block, Week } from "../../api/types";
import type { UnfoldAnswer } from "../answers";
import { followedBy, LIGHT_WEEK, unfoldedFrom, type Choices } from "../block/unfolding";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import { FindingList } from "../findings/finding-list";
import { countsInWords, countsOf } from "../findings/findings";
import { counted } from "../shell/counted";
import { Failure, FaultList } from "../shell/states";
import type { Asked } from "../shell/use-after-pause";
import { useKeys } from "../writer/use-keys";
import { useWriter } from "../writer/writer-state";
import { LoadTable } from "./load-table";
import { LightWeekFields } from "./rule-fields";
import { RuleForAll, UnfoldRules } from "./unfold-rules";
import { useUnfolding } from "./use-unfolding";

interface UnfoldPanelProps {
  readonly week: Week;
  readonly at: number;
  /** Whose loads the table shows; "" for nobody's. */
  readonly athlete: string;
  /** The block's id, once the server has it. */
  readonly id: string | undefined;
  readonly choices: Choices;
  readonly onChoices: (choices: Choices) => void;
  /** Closes the panel; with words on what was done, if anything. */
  readonly onClose: (said: string) => void;
}

/** A week made into several by a rule for each exercise, seen as loads before it is put in. */
export function UnfoldPanel(props: UnfoldPanelProps) {
  const { week, choices, onClose } = props;
  const writer = useWriter();
  const block = writer.block.value;
  const asked = useUnfolding(block, week, choices, props.athlete, props.id);
  const made = asked.state === "ready" ? (asked.answer?.document ?? null) : null;
  const putIn = () => {
    if (made === null) return;
    writer.edit(() => made);
    onClose(`${week.name} now goes on for ${counted(choices.weeks, "week")}. Undo takes it back.`);
  };
  const panel = useKeys((event) => {
    if (event.key === "Escape") return () => onClose("");
    return event.key === "Enter" && event.ctrlKey ? putIn : null;
  });
  return (
    <div class="unfold" role="group" aria-label={`Unfold ${week.name}`} ref={panel}>
      <h2>{week.name}, unfolded</h2>
      <HowFar {...props} block={block} />
      <div class="unfold-both">
        <UnfoldRules {...props} faults={faultsOf(asked)} />
        <div class="unfold-outcome">
          <Outcome asked={asked} athlete={props.athlete} />
        </div>
      </div>
      <p class="bar">
        <button type="button" class="main" disabled={made === null} onClick={putIn}>
          Put it in
        </button>
        <button type="button" class="plain" onClick={() => onClose("")}>
          Leave it
        </button>
        <span class="soft" role="status">
          {asked.state === "working" && "working out the weeks …"}
        </span>
      </p>
    </div>
  );
}

function HowFar({ week, choices, onChoices, block }: UnfoldPanelProps & { readonly block: Block }) {
  const before = unfoldedFrom(block, week).length;
  const first = useRef<HTMLDivElement>(null);
  useEffect(() => first.current?.querySelector("input")?.focus(), []);
  const light = choices.lightWeek;
  const next = followedBy(block, week);
  return (
    <div class="fields" ref={first}>
      <NumberField
        label="Weeks in all"
        width="w2"
        whole
        least={2}
        value={choices.weeks}
        onValue={(weeks) => weeks !== undefined && onChoices({ ...choices, weeks })}
      />
      <TruthField
        label="With a light week"
        value={light !== null}
        onValue={(on) => onChoices({ ...choices, lightWeek: on ? LIGHT_WEEK : null })}
      />
      {light && (
        <LightWeekFields
          rule={light}
          onRule={(lightWeek) => onChoices({ ...choices, lightWeek })}
        />
      )}
      {before > 0 && (
        <ChoiceField<keyof typeof BEFORE>
          label={`${counted(before, "week")} came from it before`}
          choices={BEFORE}
          value={choices.anew ? "anew" : "stay"}
          onValue={(answer) => onChoices({ ...choices, anew: answer === "anew" })}
        />
      )}
      <RuleForAll week={week} choices={choices} onChoices={onChoices} />
      {next && <p class="soft full stays">The new weeks stand before {next.name}, which stays.</p>}
    </div>
  );
}

const BEFORE = {
  anew: "make them anew; what was changed in them goes",
  stay: "leave them as they are, add what is missing",
} as const;

interface OutcomeProps {
  readonly asked: Asked<UnfoldAnswer>;
  readonly athlete: string;
}

/** The table of loads, or what stands in its way. */
function Outcome({ asked, athlete }: OutcomeProps) {
  const { state, answer, fault } = asked;
  const faults = faultsOf(asked);
  if (faults.length > 0) return <FaultList faults={faults.filter(isElsewhere)} />;
  if (state === "failed") return <Failure fault={fault} what="weeks" />;
  if (!answer?.document) return null;
  const counts = countsOf(answer.findings);
  const found = countsInWords(counts);
  return (
    <>
      {!athlete && <p class="soft">Choose an athlete above to see the loads in kg.</p>}
      <LoadTable unfolded={{ ...answer, document: answer.document }} stale={state === "working"} />
      {found && (
        <details class="unfold-findings" open={counts.stops > 0}>
          <summary>{found}</summary>
          <FindingList findings={answer.findings} placed />
        </details>
      )}
    </>
  );
}

/** Faults of rules stand beside their exercise. */
function isElsewhere({ path }: Fault): boolean {
  return !path.startsWith("rules.") && !path.endsWith(".progression");
}

function faultsOf({ state, answer, fault }: Asked<UnfoldAnswer>): readonly Fault[] {
  if (state === "failed") return fault instanceof Refused ? fault.faults : [];
  return answer?.faults ?? [];
}
