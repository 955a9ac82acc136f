import type { Answers } from "../../api/screening";
import { isAsked, isOnItsWay, urgentAnswers, urgentWords } from "../../offline/occlusion/standing";
import { useApp } from "../app-context";
import { useInView } from "../device/view-time";
import { usePhoneState } from "../hooks";
import { Disclaimer } from "../stop/stop-screen";
import { isoDay } from "../words/times";
import { dayInWords } from "./answer-words";
import type { OcclusionKnown } from "./known";
import { capital } from "./words";

interface Props {
  readonly known: OcclusionKnown;
  /** What was recorded a moment ago. */
  readonly recorded: Answers | null;
  readonly onBegin: () => void;
}

/** How it stands, why, and what opens it. */
export function ScreeningState({ known, recorded, onBegin }: Props) {
  const { router } = useApp();
  const today = isoDay(useInView());
  const wanted = isAsked(known, today);
  const since = recorded ? urgentAnswers(recorded, known.questions) : [];
  const urgent = [...new Set([...since, ...urgentWords(known)])];
  return (
    <main class="page">
      {urgent.map((words) => (
        <p key={words} class="notice urgent" role="alert">
          {words}
        </p>
      ))}
      {isOnItsWay(known) ? <OnItsWay /> : <Standing known={known} wanted={wanted} />}
      <button type="button" class={wanted ? "button main" : "button"} onClick={onBegin}>
        {wanted ? "Answer the screening" : "Answer it anew"}
      </button>
      {!wanted && (
        <p class="small">
          Anew after an illness, an operation, a birth, a new medicine or a long journey. It is
          closed until your coach has read it.
        </p>
      )}
      <button type="button" class="button quiet" onClick={() => router.go("/")}>
        To Today
      </button>
      <Disclaimer />
    </main>
  );
}

function OnItsWay() {
  const { entries, identity } = usePhoneState();
  const sent = entries.every(({ outbox, entry }) => !outbox || entry.kind !== "screening.answered");
  const coach = identity?.coach ?? "your coach";
  return (
    <>
      <h2 class="page-title">Answered</h2>
      <p class="lead">
        {sent
          ? `${coach} has it and reads it.`
          : `Saved on this phone. ${coach} gets it with the next network.`}
      </p>
      <p>Occlusion work stays closed until then.</p>
    </>
  );
}

interface StandingProps {
  readonly known: OcclusionKnown;
  readonly wanted: boolean;
}

function Standing({ known, wanted }: StandingProps) {
  const { open, why, what_opens_it, until, answered_on, company } = known.standing;
  if (answered_on === null)
    return (
      <>
        <h2 class="page-title">Your coach asks for a screening</h2>
        <p class="lead">Without it, no occlusion work can be planned for you.</p>
      </>
    );
  if (open && !wanted)
    return (
      <>
        <h2 class="page-title">Open</h2>
        <p class="lead">{until ? `Your screening counts until ${dayInWords(until)}.` : ""}</p>
        {company && <p>Only with somebody there who could take the wraps off.</p>}
      </>
    );
  return (
    <>
      <h2 class="page-title">Closed</h2>
      <p class="lead">Occlusion work is locked.</p>
      <dl class="figures">
        {why.length > 0 && <Lines title="Why" lines={why} />}
        {what_opens_it.length > 0 && <Lines title="What opens it" lines={what_opens_it} />}
      </dl>
    </>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>
        {lines.map((line) => (
          <p key={line}>{capital(line)}.</p>
        ))}
      </dd>
    </div>
  );
}
