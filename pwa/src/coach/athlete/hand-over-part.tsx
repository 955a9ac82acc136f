import { useState } from "preact/hooks";

import type { HandOverSeen, HandOverTaken } from "../answers";
import { lookAtHandOver, takeHandOver } from "../desk";
import { counted } from "../shell/counted";
import { useDesk } from "../shell/desk-state";
import { Failure, Said } from "../shell/states";
import { useAct } from "../shell/use-act";
import { dayAndClock } from "../shell/when";

interface HandOverPartProps {
  readonly athlete: string;
  readonly again: () => void;
}

/** What is taken in is the text that was looked at, whichever file was chosen meanwhile. */
interface Looked {
  readonly text: string;
  readonly seen: HandOverSeen;
}

/** A file with what a phone could not send: looked at first, then taken in as a sync is. */
export function HandOverPart({ athlete, again }: HandOverPartProps) {
  const act = useAct();
  const [looked, setLooked] = useState<Looked | null>(null);
  const [taken, setTaken] = useState<HandOverTaken | null>(null);
  const choose = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (!file) return;
    setLooked(null);
    setTaken(null);
    const text = await file.text();
    // Else the browser does not tell that the same file was chosen again.
    input.value = "";
    act.run(
      () => lookAtHandOver(athlete, text),
      (seen) => setLooked({ text, seen }),
    );
  };
  const take = ({ text }: Looked) =>
    act.run(
      () => takeHandOver(athlete, text),
      (answer) => {
        setTaken(answer);
        setLooked(null);
        again();
      },
    );
  return (
    <section>
      <h2>A hand-over file</h2>
      <p class="aside-note">
        A phone that found no network makes a file of what is unsent (on its page “This phone”).
        Taking it in twice, or after the phone has sent it all the same, doubles nothing.
      </p>
      <div class="field take-in">
        <label>
          <span class="field-label">The file from the phone</span>
          <input
            type="file"
            accept=".json,.txt,application/json,text/plain"
            disabled={act.busy}
            onChange={(event) => void choose(event.currentTarget)}
          />
        </label>
      </div>
      <Failure fault={act.fault} />
      {act.fault !== null && !looked && <p class="aside-note">Nothing was taken in.</p>}
      {looked && <Seen seen={looked.seen} busy={act.busy} onTake={() => take(looked)} />}
      {taken && <Said>{takenInWords(taken)}</Said>}
    </section>
  );
}

interface SeenProps {
  readonly seen: HandOverSeen;
  readonly busy: boolean;
  readonly onTake: () => void;
}

function Seen({ seen, busy, onTake }: SeenProps) {
  const now = useDesk().now();
  return (
    <div role="status">
      <p>
        <strong>{seen.athlete}</strong>, {seen.phone ?? "a phone that was never paired here"}:{" "}
        {counted(seen.count, "entry", "entries")}, {counted(seen.sets, "set")} among them
        {seen.first_at && seen.last_at && <Span from={seen.first_at} to={seen.last_at} now={now} />}
        . {seen.here > 0 && `${seen.here} of them are here already.`}
      </p>
      {remarks(seen).map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
      <button type="button" class="main" disabled={busy || seen.count === 0} onClick={onTake}>
        {busy ? "Taking in …" : "Take in"}
      </button>
    </div>
  );
}

interface SpanProps {
  readonly from: string;
  readonly to: string;
  readonly now: number;
}

function Span({ from, to, now }: SpanProps) {
  if (Number.isNaN(Date.parse(from)) || Number.isNaN(Date.parse(to))) return null;
  return (
    <>
      , from {dayAndClock(from, now)} to {dayAndClock(to, now)}
    </>
  );
}

/** What the coach has to know before it is taken in. */
function remarks({ phone, revoked, lost }: HandOverSeen): string[] {
  return [
    lost > 0
      ? `The file is damaged: ${counted(lost, "entry", "entries")} cannot be read. Take in the rest, and ask for the file once more; nothing is doubled.`
      : "",
    phone === null
      ? "This server has never paired that phone, so all of it waits among the held entries for you to let it count."
      : "",
    revoked
      ? "You have revoked that phone, so all of it waits among the held entries for you to let it count."
      : "",
  ].filter((remark) => remark !== "");
}

function takenInWords({ stored, duplicate, held, lost }: HandOverTaken): string {
  const parts = [`${counted(stored, "entry", "entries")} taken in`];
  if (duplicate > 0) parts.push(`${duplicate} were here before`);
  if (held > 0) parts.push(`${held} wait among the held entries`);
  if (lost > 0) parts.push(`${lost} could not be read`);
  return `${parts.join(", ")}.`;
}
