import "../look/occlusion.css";
import { useState } from "preact/hooks";

import type { Answers } from "../../api/screening";
import { asked, firstOpen } from "../../offline/occlusion/answers";
import { isOnItsWay } from "../../offline/occlusion/standing";
import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { Disclaimer } from "../stop/stop-screen";
import { TopBar } from "../top-bar";
import { Ask } from "./ask";
import { type OcclusionKnown, useKnown, useTell } from "./known";
import { Review } from "./review";
import { ScreeningState } from "./screening-state";

/** The screening: what it is for, one question at a time, everything shown, and then recorded. */
export function ScreeningScreen() {
  const known = useKnown();
  if (known) return <Screening known={known} />;
  return (
    <div class="screen">
      <TopBar title="Screening" back="/" />
      <main class="page">
        <p class="lead">Your coach has not asked for a screening.</p>
      </main>
    </div>
  );
}

/** A question's place, or everything that was answered. */
type Where = "state" | "purpose" | "review" | number;

function Screening({ known }: { readonly known: OcclusionKnown }) {
  const { phone } = useApp();
  const tell = useTell();
  const { screening } = known.questions;
  const answers = usePhoneState().settings.screening ?? {};
  const begun = Object.keys(answers).length > 0;
  const unheard = known.standing.answered_on === null && !isOnItsWay(known);
  const first = unheard ? "purpose" : "state";
  const [where, setWhere] = useState<Where>(() =>
    begun ? (firstOpen(screening, answers) ?? "review") : first,
  );
  const [recorded, setRecorded] = useState<Answers | null>(null);

  function answer(place: number, value: Answers[string]): void {
    const question = screening[place];
    if (!question) return;
    const next = { ...answers, [question.key]: value };
    void phone.saveSettings({ screening: next });
    setWhere(firstOpen(screening, next) === null ? "review" : place + 1);
  }

  async function record(): Promise<void> {
    const given = asked(screening, answers);
    if (!(await tell("screening.answered", { answers: given }))) return;
    setRecorded(given);
    setWhere("state");
    void phone.saveSettings({ screening: {} });
  }

  return (
    <div class="screen">
      <TopBar title="Screening" back="/" />
      {where === "state" && (
        <ScreeningState known={known} recorded={recorded} onBegin={() => setWhere("purpose")} />
      )}
      {where === "purpose" && (
        <Purpose
          count={screening.length}
          onBegin={() => setWhere(firstOpen(screening, answers) ?? 0)}
        />
      )}
      {typeof where === "number" && (
        <Ask
          key={where}
          questions={known.questions}
          place={where}
          answers={answers}
          onAnswer={(value) => answer(where, value)}
          onBack={() => setWhere(where === 0 ? "purpose" : where - 1)}
        />
      )}
      {where === "review" && (
        <Review
          questions={known.questions}
          answers={answers}
          onChange={setWhere}
          onRecord={() => void record()}
        />
      )}
    </div>
  );
}

interface PurposeProps {
  readonly count: number;
  readonly onBegin: () => void;
}

function Purpose({ count, onBegin }: PurposeProps) {
  const { identity } = usePhoneState();
  const coach = identity?.coach ?? "your coach";
  return (
    <main class="page">
      <h2 class="page-title">Before any wrap goes on</h2>
      <p class="lead">{count} questions about your health, one at a time.</p>
      <ul class="plain">
        <li>
          Occlusion work holds blood back in an arm or a leg. For some people that is dangerous. The
          answers say whether it may be planned for you.
        </li>
        <li>“Not sure” is a full answer. It counts as yes, to be on the safe side.</li>
        <li>{coach} sees every answer, to plan for you.</li>
        <li>You can stop at any time: what you answered stays on this phone until you send it.</li>
        <li>Have a recent blood pressure at hand, with its date.</li>
      </ul>
      <button type="button" class="button main" onClick={onBegin}>
        Begin
      </button>
      <Disclaimer />
    </main>
  );
}
