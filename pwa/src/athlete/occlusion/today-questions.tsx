import { useTop } from "../device/top";
import { useState } from "preact/hooks";

import type { Answers, Question, Questions } from "../../api/screening";
import type { SheetExercise } from "../../api/types";
import { isWhole } from "../../offline/occlusion/answers";
import { useTell } from "./known";
import { replyInWords } from "./answer-words";

interface Props {
  readonly questions: Questions;
  readonly exercise: SheetExercise;
}

const REPLIES = ["no", "yes", "not-sure"] as const;

/** The questions of the day on one page; each wants its own answer. */
export function TodayQuestions({ questions, exercise }: Props) {
  useTop();
  const tell = useTell();
  const [answers, setAnswers] = useState<Answers>({});
  const { today } = questions;
  const given = today.filter(({ key }) => key in answers).length;
  const whole = isWhole(answers, today);
  return (
    <>
      <main class="page">
        <h2 class="bout-title">{exercise.name}</h2>
        <p>
          Before a wrap goes on today: {today.length} questions. Not sure is a full answer. Your
          coach sees them.
        </p>
        {today.map((question) => (
          <OneQuestion
            key={question.key}
            question={question}
            value={answers[question.key]}
            onAnswer={(value) => setAnswers({ ...answers, [question.key]: value })}
          />
        ))}
      </main>
      <section class="set-panel" aria-label="Answers">
        <button
          type="button"
          class="button main record"
          disabled={!whole}
          onClick={() => void tell("screening.answered", { answers })}
        >
          {whole ? "These are my answers" : `${given} of ${today.length} answered`}
        </button>
      </section>
    </>
  );
}

interface OneProps {
  readonly question: Question;
  readonly value: Answers[string] | undefined;
  readonly onAnswer: (value: string) => void;
}

function OneQuestion({ question, value, onAnswer }: OneProps) {
  return (
    <fieldset class="day-question">
      <legend>{question.text}</legend>
      {REPLIES.map((reply) => (
        <button
          key={reply}
          type="button"
          class="button"
          aria-pressed={value === reply}
          onClick={() => onAnswer(reply)}
        >
          {replyInWords(reply)}
        </button>
      ))}
    </fieldset>
  );
}
