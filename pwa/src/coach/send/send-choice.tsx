import { useMemo } from "preact/hooks";

import type { Block } from "../../api/types";
import type { Finding, LoadsAnswer, OwnLine, SquadLine } from "../answers";
import { TruthField } from "../fields/choice-field";
import { FindingList } from "../findings/finding-list";
import { countsInWords, countsOf } from "../findings/findings";
import { OwnList } from "../own/own-list";
import { counted } from "../shell/counted";
import { Link } from "../shell/link";
import { fewAtATime, type Turns } from "../shell/few-at-a-time";
import { athletePath, ROOT } from "../shell/route";
import { Failure, FaultList } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { loads } from "../desk";
import { StopGroups } from "./stop-groups";

interface SendChoiceProps {
  /** The block's id. */
  readonly id: string;
  readonly document: Block;
  readonly athletes: readonly SquadLine[];
  readonly chosen: ReadonlySet<string>;
  readonly onChosen: (chosen: ReadonlySet<string>) => void;
}

/** The squad with a tick for each, and for those ticked what will be sent. */
export function SendChoice({ id: block, document, athletes, chosen, onChosen }: SendChoiceProps) {
  const turns = useMemo(() => fewAtATime(AT_ONCE), []);
  if (athletes.length === 0) {
    return (
      <p>
        Nobody is in your squad yet. <Link to={ROOT}>Add an athlete</Link> first.
      </p>
    );
  }
  const all = chosen.size === athletes.length;
  const tick = (id: string, on: boolean) => {
    const next = new Set(chosen);
    if (on) next.add(id);
    else next.delete(id);
    onChosen(next);
  };
  return (
    <fieldset class="send-choice">
      <legend>To whom</legend>
      <TruthField
        label="Everyone"
        value={all}
        onValue={(on) => onChosen(new Set(on ? athletes.map((each) => each.id) : []))}
      />
      <ul>
        {athletes.map((athlete) => (
          <li key={athlete.id}>
            <TruthField
              label={athlete.name}
              value={chosen.has(athlete.id)}
              onValue={(on) => tick(athlete.id, on)}
            />
            <span class="soft">{now(athlete)}</span>
            {chosen.has(athlete.id) && (
              <Preview block={block} document={document} athlete={athlete} turns={turns} />
            )}
          </li>
        ))}
      </ul>
    </fieldset>
  );
}

function now(athlete: SquadLine): string {
  const phone = athlete.devices === 0 ? "; no phone paired yet, it will wait" : "";
  if (!athlete.block) return `has nothing yet${phone}`;
  return `has ${athlete.block.name}, revision ${athlete.revision ?? "?"}${phone}`;
}

interface PreviewProps {
  readonly block: string;
  readonly document: Block;
  readonly athlete: SquadLine;
  readonly turns: Turns;
}

const AT_ONCE = 2;

/** What this athlete would get, worked out as it will be when sent. */
function Preview({ block, document, athlete, turns }: PreviewProps) {
  const load = useLoad(`preview ${athlete.id}`, () =>
    turns(() => loads(document, athlete.id, { block })),
  );
  if (load.now.state === "loading") {
    return (
      <p class="soft" role="status">
        working out the loads …
      </p>
    );
  }
  if (load.now.state === "failed") {
    return <Failure fault={load.now.fault} what="loads" again={load.again} />;
  }
  return (
    <>
      <Readiness answer={load.now.value} athlete={athlete} />
      <Own block={block} athlete={athlete} changes={load.now.value.own} onDecided={load.again} />
    </>
  );
}

interface ReadinessProps {
  readonly answer: LoadsAnswer;
  readonly athlete: SquadLine;
}

function Readiness({ answer, athlete }: ReadinessProps) {
  const { faults, findings, sheets, changes } = answer;
  const { stops } = countsOf(findings);
  if (faults.length === 0 && stops === 0) {
    return (
      <>
        <p role="status">ready: {counted(sheets.length, "load sheet")}</p>
        <Changes changes={changes} athlete={athlete} />
        <Found findings={findings} />
      </>
    );
  }
  const mayOverrule =
    faults.length === 0 && findings.every((each) => each.severity !== "stop" || each.may_overrule);
  return (
    <div class="failure">
      <p role="status">
        would be refused; mend the text, or look at{" "}
        <Link to={athletePath(athlete.id, "person")}>the maxima</Link> and{" "}
        <Link to={athletePath(athlete.id, "kit")}>the kit</Link>
        {mayOverrule && "; or send it, and then set the stops aside in writing"}
      </p>
      <FaultList faults={faults} />
      <Found findings={findings} />
    </div>
  );
}

/** What is otherwise than in what the athlete has, before it is sent. */
function Changes({
  changes,
  athlete,
}: Pick<LoadsAnswer, "changes"> & Pick<PreviewProps, "athlete">) {
  if (!athlete.block) return null;
  if (changes.length === 0) return <p class="soft">nothing in it differs from what they have</p>;
  return (
    <ul class="send-changes" aria-label={`What changes for ${athlete.name}`}>
      {changes.map((change) => (
        <li key={change}>{change}</li>
      ))}
    </ul>
  );
}

interface OwnProps {
  readonly block: string;
  readonly athlete: SquadLine;
  readonly changes: readonly OwnLine[];
  readonly onDecided: () => void;
}

/** What stays this athlete's own; where the block's line has changed since, the coach decides. */
function Own({ block, athlete, changes, onDecided }: OwnProps) {
  if (changes.length === 0) return null;
  const clashes = changes.filter(({ stand }) => stand !== "kept").length;
  return (
    <details class="preview-findings" open={clashes > 0}>
      <summary>
        {counted(changes.length, "own change")} of {athlete.name}, kept
        {clashes > 0 && `; ${clashes} to decide`}
      </summary>
      <OwnList block={block} athlete={athlete} changes={changes} onDecided={onDecided} />
    </details>
  );
}

/** All that was found, folded: for thirty athletes only the counts are read at first. */
function Found({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0) return null;
  return (
    <details class="preview-findings">
      <summary>{countsInWords(countsOf(findings))}</summary>
      <StopGroups stops={findings.filter((each) => each.severity === "stop")} />
      <FindingList findings={findings.filter((each) => each.severity !== "stop")} placed />
    </details>
  );
}
