import "../look/occlusion.css";
import { useState } from "preact/hooks";

import { checkDue, doNow, isUrgent, urgencyOf } from "../../offline/occlusion/after-check";
import { useApp } from "../app-context";
import { useArmed } from "../device/armed";
import { useInView } from "../device/view-time";
import { Disclaimer } from "../stop/stop-screen";
import { TopBar } from "../top-bar";
import { count } from "../words/sets";
import { moment } from "../words/times";
import { type OcclusionKnown, useKnown, useTell } from "./known";
import { capital } from "./words";

interface Told {
  readonly hours: number;
  readonly signs: readonly string[];
}

/** The questions 24, 48 and 72 hours after occlusion work. */
export function AfterScreen() {
  const known = useKnown();
  const [told, setTold] = useState<Told | null>(null);
  const now = useInView();
  const due = known && checkDue(known.entries, known.questions.after_hours, now);
  const page = () => {
    if (known && told) return <WhatNow known={known} told={told} />;
    if (known && due)
      return (
        <Signs known={known} hours={due.hours} when={moment(due.offAt, now)} onTold={setTold} />
      );
    return <Nothing />;
  };
  return (
    <div class="screen">
      <TopBar title="After the work" back="/" />
      {page()}
    </div>
  );
}

function Nothing() {
  return (
    <main class="page">
      <p class="lead">Nothing to answer now.</p>
      <p>The questions come 24, 48 and 72 hours after a wrap came off.</p>
    </main>
  );
}

interface SignsProps {
  readonly known: OcclusionKnown;
  readonly hours: number;
  readonly when: string;
  readonly onTold: (told: Told) => void;
}

function Signs({ known, hours, when, onTold }: SignsProps) {
  const tell = useTell();
  const armed = useArmed();
  const [signs, setSigns] = useState<readonly string[]>([]);
  const { after_signs } = known.questions;

  function toggle(key: string): void {
    setSigns(signs.includes(key) ? signs.filter((each) => each !== key) : [...signs, key]);
  }

  async function record(): Promise<void> {
    if (await tell("after.check", { hours, signs })) onTold({ hours, signs });
  }

  return (
    <>
      <main class="page">
        <h2 class="page-title">How is it {hours} hours on?</h2>
        <p>
          Since the wraps came off, {when}. Tick all that is so now or was since then. None of these
          is a full answer.
        </p>
        <div class="ticks" role="group" aria-label="Signs">
          {after_signs.map(({ key, text }) => (
            <button
              key={key}
              type="button"
              class="tick"
              aria-pressed={signs.includes(key)}
              onClick={() => toggle(key)}
            >
              <TickBox ticked={signs.includes(key)} />
              {capital(text)}
            </button>
          ))}
        </div>
      </main>
      <section class="set-panel" aria-label="Record">
        <button
          type="button"
          class="button main record"
          disabled={!armed}
          onClick={() => void record()}
        >
          {signs.length === 0 ? "None of these" : `Record ${count(signs.length, "sign")}`}
        </button>
      </section>
    </>
  );
}

function TickBox({ ticked }: { readonly ticked: boolean }) {
  return (
    <svg class="tick-box" viewBox="0 0 24 24" aria-hidden="true">
      <rect x="2" y="2" width="20" height="20" rx="4" />
      {ticked && <path d="M6.5 12.5l4 4 7-9" />}
    </svg>
  );
}

function WhatNow({ known, told }: { readonly known: OcclusionKnown; readonly told: Told }) {
  const { router } = useApp();
  const [first, ...more] = doNow(told.signs, told.hours, known.questions);
  const urgent = isUrgent(urgencyOf(told.signs, known.questions.after_signs, told.hours));
  return (
    <main class={urgent ? "page urgent-page" : "page"}>
      <div role="alert">
        <h2 class="page-title">{first}</h2>
      </div>
      {more.map((line) => (
        <p key={line} class="lead">
          {line}
        </p>
      ))}
      {urgent && (
        <p>Occlusion work is locked until a clinician has cleared it. Your coach is told.</p>
      )}
      {!urgent && told.signs.length > 0 && (
        <p>Soreness on both sides is ordinary for up to 96 hours. Your coach sees your answer.</p>
      )}
      <button type="button" class="button" onClick={() => router.replace("/")}>
        To Today
      </button>
      <Disclaimer />
    </main>
  );
}
