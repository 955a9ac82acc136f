import "../look/occlusion.css";

import { checkDue } from "../../offline/occlusion/after-check";
import { isAsked, urgentWords } from "../../offline/occlusion/standing";
import { useApp } from "../app-context";
import { useInView } from "../device/view-time";
import { usePhoneState } from "../hooks";
import { isoDay } from "../words/times";
import { type OcclusionKnown, useKnown } from "./known";

/** What Today says of screening: what cannot wait, what is asked for, and the way there. */
export function OcclusionNews() {
  const known = useKnown();
  return known && <News known={known} />;
}

function News({ known }: { readonly known: OcclusionKnown }) {
  const { router } = useApp();
  const now = useInView();
  const due = checkDue(known.entries, known.questions.after_hours, now);
  return (
    <>
      <Urgent known={known} />
      {due && (
        <section class="card due" aria-label="After the work">
          <p class="when">{due.hours} hours after the wraps</p>
          <h2>How is it now?</h2>
          <p class="facts">One page. It has to be answered before the next wrap goes on.</p>
          <button type="button" class="button main" onClick={() => router.go("/after")}>
            Answer
          </button>
        </section>
      )}
      <Wanted known={known} today={isoDay(now)} />
    </>
  );
}

/** Until it was read. */
function Urgent({ known }: { readonly known: OcclusionKnown }) {
  const { phone } = useApp();
  const { settings } = usePhoneState();
  const words = urgentWords(known);
  const all = words.join(" ");
  if (words.length === 0 || settings.read === all) return null;
  return (
    <div class="notice urgent" role="alert">
      {words.map((line) => (
        <p key={line} class="lead">
          {line}
        </p>
      ))}
      <button type="button" class="button" onClick={() => void phone.saveSettings({ read: all })}>
        I have read this
      </button>
    </div>
  );
}

function Wanted({ known, today }: { readonly known: OcclusionKnown; readonly today: string }) {
  const { router } = useApp();
  const answers = Object.keys(usePhoneState().settings.screening ?? {}).length;
  const { screening } = known.questions;
  if (!isAsked(known, today) && answers === 0) return null;
  const anew = known.standing.answered_on !== null;
  return (
    <section class="card due" aria-label="Screening">
      <p class="when">{answers > 0 ? `${answers} of ${screening.length} answered` : "Screening"}</p>
      <h2>Your coach asks for a screening</h2>
      <p class="facts">
        {anew ? "Your last one does not count any more. " : ""}
        {screening.length} questions about your health, before any wrap goes on.
      </p>
      <button type="button" class="button main" onClick={() => router.go("/screening")}>
        {answers > 0 ? "Carry on" : "See what it asks"}
      </button>
    </section>
  );
}

/** A place of its own, also when nothing is asked. */
export function ScreeningLink() {
  const { router } = useApp();
  return useKnown() ? (
    <button type="button" class="button" onClick={() => router.go("/screening")}>
      Screening
    </button>
  ) : null;
}
