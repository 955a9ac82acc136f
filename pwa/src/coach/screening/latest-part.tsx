import { useState } from "preact/hooks";

import type { Answered } from "../answers";
import { counted } from "../shell/counted";
import { useMay } from "../shell/right";
import { calendarDate } from "../shell/when";
import { AnswerTable } from "./answer-table";
import { needsNote, sorted, THE_REST, ticksNeeded, wantsSignature } from "./reading";
import type { PieceProps } from "./screening-part";
import { SignForm } from "./sign-form";

/** The latest answers: to be read and signed, or, once that is done, to be looked up. */
export function LatestPart(piece: PieceProps) {
  const { latest } = piece.page;
  const own = useMay("own");
  if (latest === null) return null;
  const title = `The answers of ${calendarDate(latest.on)}`;
  if (wantsSignature(piece.page) && !own) {
    return (
      <section>
        <h2>{title}</h2>
        <p>They wait to be read and signed by {piece.athlete.owner}.</p>
        <AllAnswers answered={latest} />
      </section>
    );
  }
  if (wantsSignature(piece.page)) {
    return (
      <section>
        <h2>{title}</h2>
        <Reading key={`${latest.id} ${piece.page.signed}`} {...piece} latest={latest} />
      </section>
    );
  }
  return (
    <section>
      <h2>{title}</h2>
      <p>Read and signed.</p>
      <details>
        <summary>All answers</summary>
        <AllAnswers answered={latest} />
      </details>
    </section>
  );
}

/** Answers to look up, those that lead somewhere first. */
export function AllAnswers({ answered }: { readonly answered: Answered }) {
  const { marked, rest } = sorted(answered);
  return (
    <>
      <AnswerTable caption="These lead somewhere" replies={marked} marked />
      <AnswerTable caption="The other answers" replies={rest} />
    </>
  );
}

function Reading(piece: PieceProps & { readonly latest: Answered }) {
  const { page, latest } = piece;
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set());
  const answers = sorted(latest);
  const put = (key: string, on: boolean) => {
    const next = new Set(ticked);
    if (on) next.add(key);
    else next.delete(key);
    setTicked(next);
  };
  return (
    <>
      <AnswerTable
        caption="These lead somewhere. Tick each once you have read it."
        replies={answers.marked}
        marked
        ticks={{ ticked, put }}
      />
      <AnswerTable
        caption="The other answers: none of them closes anything."
        replies={answers.rest}
      />
      {answers.rest.length > 0 && (
        <label class="truth tick">
          <input
            type="checkbox"
            checked={ticked.has(THE_REST)}
            onChange={(event) => put(THE_REST, event.currentTarget.checked)}
          />
          I have read the other {counted(answers.rest.length, "answer")}
        </label>
      )}
      <SignForm
        {...piece}
        of={latest.id}
        needed={ticksNeeded(answers)}
        ticked={ticked}
        noteNeeded={needsNote(page)}
      />
    </>
  );
}
