import { useState } from "preact/hooks";

import type { BlockAnswer, SquadLine } from "../answers";
import { draftOf, ownerOf } from "../block/drafts";
import { block, squad } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { counted } from "../shell/counted";
import { useDesk, type Desk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { BLOCKS, blockPath, ownPath } from "../shell/route";
import { Failure, Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { calendarDate, mondayOf } from "../shell/when";
import { answeredCount } from "./one-by-one";
import { SendChoice } from "./send-choice";
import { SendResult } from "./send-result";
import { useSending } from "./use-sending";

/** Whom a block goes to, what it becomes for each, and one button. */
export function SendScreen({ id }: { readonly id: string }) {
  const load = useLoad(`send ${id}`, async () => ({
    block: await block(id),
    athletes: (await squad()).filter(({ right }) => right !== "read"),
  }));
  return (
    <Page title="Send" above={<Back id={id} />}>
      <Loaded load={load} what="the block">
        {(value) => <Send {...value} />}
      </Loaded>
    </Page>
  );
}

function Back({ id }: { readonly id: string }) {
  return (
    <>
      <Link to={BLOCKS}>Blocks</Link> / <Link to={blockPath(id)}>Back to the text</Link>
    </>
  );
}

interface SendProps {
  readonly block: BlockAnswer;
  readonly athletes: readonly SquadLine[];
}

function Send({ block: { id, document }, athletes }: SendProps) {
  const desk = useDesk();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const [startsOn, setStartsOn] = useState("");
  const { act, answer, soFar, waiting, start, overrule, again } = useSending(id, startsOn, chosen);
  const unsaved = unsavedOf(
    desk,
    id,
    athletes.filter((one) => waiting.includes(one.id)),
  );
  if (answer) {
    return (
      <SendResult
        answer={answer}
        athletes={athletes}
        act={act}
        onOverruled={overrule}
        again={again}
      />
    );
  }
  return (
    <>
      <What document={document} />
      {unsaved.map(({ what, to }) => (
        <p key={to} class="failure" role="alert">
          The server lacks {what}, which this browser holds. <Link to={to}>Open it</Link> and let it
          be saved first.
        </p>
      ))}
      <ChoiceField
        label="The first week begins"
        choices={mondaysFrom(desk.now())}
        value={startsOn}
        onValue={setStartsOn}
      />
      <SendChoice
        id={id}
        document={document}
        athletes={athletes}
        chosen={chosen}
        onChosen={setChosen}
      />
      <Failure fault={act.fault} />
      <div class="save-bar">
        <button
          type="button"
          class="main"
          disabled={act.busy || unsaved.length > 0 || waiting.length === 0}
          onClick={start}
        >
          {sendWords(act.busy, waiting.length)}
        </button>
        <Progress done={answeredCount(soFar)} left={waiting.length} busy={act.busy} />
      </div>
    </>
  );
}

function What({ document }: Pick<BlockAnswer, "document">) {
  const sessions = document.weeks.reduce((sum, week) => sum + week.sessions.length, 0);
  return (
    <p class="lead">
      <strong>{document.name}</strong>: {counted(document.weeks.length, "week")},{" "}
      {counted(sessions, "session")}. Each athlete gets own loads, worked out from own maxima on own
      kit. Sessions under way go on as they began.
    </p>
  );
}

/** What would not be sent because only this browser has it, and where it is brought to the server. */
function unsavedOf({ shelf, coach }: Desk, id: string, athletes: readonly SquadLine[]) {
  const me = coach.value?.id ?? "";
  const text = { owner: me, what: "a newer text of the block", to: blockPath(id) };
  const own = athletes.map((athlete) => ({
    owner: ownerOf(me, athlete.id),
    what: `a change for ${athlete.name} only`,
    to: ownPath(id, athlete.id),
  }));
  return [text, ...own].filter(({ owner }) => draftOf(shelf, owner, id) !== null);
}

interface ProgressProps {
  readonly done: number;
  readonly left: number;
  readonly busy: boolean;
}

/** How far a sending to many has come; also where it broke off. */
function Progress({ done, left, busy }: ProgressProps) {
  if (!busy && done === 0) return null;
  const all = done + left;
  return (
    <span class="send-progress">
      <progress max={all} value={done} aria-label="Sent" />
      <span role="status">
        {done} of {all} {busy ? "answered" : "answered before it broke off; the rest still waits"}
      </span>
    </span>
  );
}

function sendWords(busy: boolean, chosen: number): string {
  if (busy) return "Sending …";
  return chosen === 0 ? "Choose to whom" : `Send to ${counted(chosen, "athlete")}`;
}

const WEEK_MS = 7 * 86_400_000;
const WEEKS_AHEAD = 6;

/** What may be chosen as the beginning: nothing said, or one of the next Mondays. */
function mondaysFrom(now: number): Readonly<Record<string, string>> {
  const mondays = Array.from({ length: WEEKS_AHEAD }, (_, week) => mondayOf(now + week * WEEK_MS));
  return Object.fromEntries([
    ["", "this week, or as it began before"],
    ...mondays.map((monday) => [monday, `Monday ${calendarDate(monday)}`]),
  ]) as Record<string, string>;
}
