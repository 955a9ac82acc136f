import { useState } from "preact/hooks";

import type { Answered } from "../answers";
import { counted } from "../shell/counted";
import { calendarDate } from "../shell/when";
import { AllAnswers } from "./latest-part";
import { sorted } from "./reading";
import type { PieceProps } from "./screening-part";

const AT_ONCE = 8;

/** Screenings before the latest, and the answers of each day of occlusion work. */
export function EarlierPart({ page }: Pick<PieceProps, "page">) {
  const [shown, setShown] = useState(AT_ONCE);
  if (page.earlier.length === 0) return null;
  return (
    <section>
      <h2>Earlier answers</h2>
      {page.earlier.slice(0, shown).map((answered) => (
        <Earlier key={answered.id} answered={answered} />
      ))}
      {page.earlier.length > shown && (
        <button type="button" onClick={() => setShown(shown + AT_ONCE)}>
          Show earlier ones
        </button>
      )}
    </section>
  );
}

function Earlier({ answered }: { readonly answered: Answered }) {
  const name = answered.kind === "screening" ? "Screening" : "Questions of the day";
  const { marked } = sorted(answered);
  return (
    <details class="session-result">
      <summary>
        <b>{name}</b>
        <span>{calendarDate(answered.on)}</span>
        <span class="soft">
          {marked.length > 0 ? `${counted(marked.length, "answer")} with a mark` : "nothing marked"}
        </span>
      </summary>
      <AllAnswers answered={answered} />
    </details>
  );
}
