import { useEffect, useRef, useState } from "preact/hooks";

import type { Answer, Answers, Question, Questions } from "../../api/screening";
import { fits, stepped, stepsOf } from "../../offline/occlusion/answers";
import { urgentAnswers } from "../../offline/occlusion/standing";
import { useArmed } from "../device/armed";
import { numberInWords, replyInWords } from "./answer-words";

interface Props {
  readonly questions: Questions;
  readonly place: number;
  readonly answers: Answers;
  readonly onAnswer: (answer: Answer) => void;
  readonly onBack: () => void;
}

/** One question, its answers under the thumb. */
export function Ask({ questions, place, answers, onAnswer, onBack }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const question = questions.screening[place];
  useEffect(() => heading.current?.focus(), []);
  if (!question) return null;
  const before = questions.screening[place - 1];
  const urgent = before ? urgentAnswers({ [before.key]: answers[before.key] }, questions) : [];
  return (
    <>
      <main class="page ask">
        <Progress place={place} count={questions.screening.length} />
        {urgent.map((words) => (
          <p key={words} class="notice urgent" role="alert">
            {words}
          </p>
        ))}
        <h2 class="page-title" ref={heading} tabIndex={-1}>
          {question.text}
        </h2>
      </main>
      <section class="set-panel ask-panel" aria-label="Your answer">
        <Control question={question} given={answers[question.key]} onAnswer={onAnswer} />
        <button type="button" class="button quiet" onClick={onBack}>
          Back
        </button>
      </section>
    </>
  );
}

function Progress({ place, count }: { readonly place: number; readonly count: number }) {
  return (
    <div class="progress">
      <p>
        {place + 1} of {count}
      </p>
      <svg viewBox="0 0 100 2" preserveAspectRatio="none" aria-hidden="true">
        <rect width={(place / count) * 100} height="2" />
      </svg>
    </div>
  );
}

interface ControlProps {
  readonly question: Question;
  readonly given: Answer | undefined;
  readonly onAnswer: (answer: Answer) => void;
}

function Control({ question, given, onAnswer }: ControlProps) {
  if (question.kind === "number")
    return <NumberControl question={question} given={given} onAnswer={onAnswer} />;
  if (question.kind === "date")
    return <DateControl question={question} given={given} onAnswer={onAnswer} />;
  const choices = question.choices ?? ["yes", "no", "not-sure"];
  return <Choice choices={choices} given={given} onAnswer={onAnswer} />;
}

interface ChoiceProps extends Omit<ControlProps, "question"> {
  readonly choices: readonly string[];
}

function Choice({ choices, given, onAnswer }: ChoiceProps) {
  const armed = useArmed();
  return choices.map((choice) => (
    <button
      key={choice}
      type="button"
      class="button reply"
      aria-pressed={given === choice}
      disabled={!armed}
      onClick={() => onAnswer(choice)}
    >
      {replyInWords(choice)}
    </button>
  ));
}

function NumberControl({ question, given, onAnswer }: ControlProps) {
  const armed = useArmed();
  const { from, fine, coarse } = stepsOf(question);
  const [value, setValue] = useState(typeof given === "number" ? given : from);
  const { unit = "" } = question;
  const steps = [-coarse, -fine, fine, coarse];
  return (
    <>
      <output class="ask-number" aria-live="polite">
        {numberInWords(value, unit)}
      </output>
      <div class="ask-steps">
        {steps.map((by) => (
          <button
            key={by}
            type="button"
            class="button"
            aria-label={`${signed(by)} ${unit}`}
            onClick={() => setValue(stepped(question, value, by))}
          >
            {signed(by)}
          </button>
        ))}
      </div>
      <button
        type="button"
        class="button main record"
        disabled={!armed}
        onClick={() => onAnswer(value)}
      >
        {numberInWords(value, unit)} is right
      </button>
    </>
  );
}

function signed(by: number): string {
  return `${by < 0 ? "−" : "+"}${Math.abs(by)}`;
}

function DateControl({ question, given, onAnswer }: ControlProps) {
  const [value, setValue] = useState(typeof given === "string" ? given : "");
  return (
    <>
      <label class="field">
        <span>Date</span>
        <input
          type="date"
          value={value}
          onInput={({ currentTarget }) => setValue(currentTarget.value)}
        />
      </label>
      <button
        type="button"
        class="button main record"
        disabled={!fits(question, value)}
        onClick={() => onAnswer(value)}
      >
        That is the day
      </button>
    </>
  );
}
