import { useEffect, useRef, useState } from "preact/hooks";

import type { Overrule, SendAnswer, SquadLine } from "../answers";
import { counted } from "../shell/counted";
import { Link } from "../shell/link";
import { athletePath, sheetsPath } from "../shell/route";
import { Failure } from "../shell/states";
import type { Act } from "../shell/use-act";
import { RefusalPart } from "./refusal-part";
import { overrulesFor, type Reasons } from "./stops";

export interface Overruled {
  readonly athlete: string;
  readonly overrules: readonly Overrule[];
}

interface SendResultProps {
  readonly answer: SendAnswer;
  readonly athletes: readonly SquadLine[];
  readonly act: Act;
  readonly onOverruled: (all: readonly Overruled[]) => void;
  readonly again: () => void;
}

/** Who has it now; for the others what stands in the way, and the button that sends all the same. */
export function SendResult({ answer, athletes, act, onOverruled, again }: SendResultProps) {
  const [reasons, setReasons] = useState<Reasons>({});
  const nameOf = (id: string) => athletes.find((each) => each.id === id)?.name ?? id;
  const ready = answer.refused.flatMap((refusal) => {
    const overrules = overrulesFor(refusal, reasons);
    return overrules ? [{ athlete: refusal.athlete, overrules }] : [];
  });
  return (
    <>
      <Summary answer={answer} />
      <SentPart answer={answer} athletes={athletes} />
      {answer.refused.length > 0 && (
        <section>
          <h2>Not sent</h2>
          {answer.refused.map((refusal) => (
            <RefusalPart
              key={refusal.athlete}
              refusal={refusal}
              name={nameOf(refusal.athlete)}
              reasons={reasons}
              onReason={(key, reason) => setReasons((before) => ({ ...before, [key]: reason }))}
            />
          ))}
        </section>
      )}
      <Failure fault={act.fault} />
      <div class="save-bar">
        {answer.refused.some(({ stops }) => stops.every((stop) => stop.may_overrule)) && (
          <button
            type="button"
            class="main"
            disabled={act.busy || ready.length === 0}
            onClick={() => onOverruled(ready)}
          >
            {buttonWords(
              act.busy,
              ready.map((each) => nameOf(each.athlete)),
            )}
          </button>
        )}
        <button type="button" onClick={again}>
          {answer.refused.length > 0 ? "Choose anew" : "Send to others"}
        </button>
      </div>
    </>
  );
}

function buttonWords(busy: boolean, names: readonly string[]): string {
  if (busy) return "Sending …";
  const [name] = names;
  if (name === undefined) return "Say why, to send all the same";
  return `Send all the same to ${names.length === 1 ? name : counted(names.length, "athlete")}`;
}

/** Takes the focus each time that an answer comes. */
function Summary({ answer: { sent, refused } }: Pick<SendResultProps, "answer">) {
  const line = useRef<HTMLParagraphElement>(null);
  useEffect(() => line.current?.focus(), [sent, refused]);
  const parts = [
    sent.length > 0 ? `Sent to ${counted(sent.length, "athlete")}` : "",
    refused.length > 0 ? `not sent to ${counted(refused.length, "athlete")}` : "",
  ].filter(Boolean);
  const words = parts.join(", ");
  return (
    <p class="lead" ref={line} tabIndex={-1}>
      {words.charAt(0).toUpperCase() + words.slice(1)}.
    </p>
  );
}

function SentPart({ answer, athletes }: Pick<SendResultProps, "answer" | "athletes">) {
  if (answer.sent.length === 0) return null;
  return (
    <section>
      <h2>Sent</h2>
      <ul class="plain-list">
        {answer.sent.map((each) => {
          const line = athletes.find(({ id }) => id === each.athlete);
          return (
            <li key={each.athlete}>
              <Link to={athletePath(each.athlete)}>{line?.name ?? each.athlete}</Link>: revision{" "}
              {each.revision}, {counted(each.sessions, "session")},{" "}
              <Link to={sheetsPath(each.athlete)}>
                as sheets for paper
                <span class="sr-only"> for {line?.name ?? each.athlete}</span>
              </Link>
              .
              {line?.devices === 0 && (
                <>
                  {" "}
                  It waits for a phone:{" "}
                  <Link to={athletePath(each.athlete, "phones")}>make an invitation</Link>.
                </>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
