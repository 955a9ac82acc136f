import type { Answers, Question, Questions } from "../../api/screening";
import { firstOpen } from "../../offline/occlusion/answers";
import { urgentAnswers } from "../../offline/occlusion/standing";
import { useArmed } from "../device/armed";
import { answerInWords } from "./answer-words";

interface Props {
  readonly questions: Questions;
  readonly answers: Answers;
  readonly onChange: (place: number) => void;
  readonly onRecord: () => void;
}

/** Everything that was answered, before it is recorded: what was recorded stays. */
export function Review({ questions, answers, onChange, onRecord }: Props) {
  const armed = useArmed();
  const { screening } = questions;
  const plain = (question: Question) => answers[question.key] === "no";
  const weighty = screening.filter((each) => each.kind === "yes-no" && !plain(each));
  const facts = screening.filter(({ kind }) => kind !== "yes-no");
  const lists = [
    { title: "Yes, or not sure", list: weighty },
    { title: "About you", list: facts },
    { title: "No", list: screening.filter((each) => each.kind === "yes-no" && plain(each)) },
  ];
  return (
    <>
      <main class="page">
        <h2 class="page-title">Is this all right?</h2>
        <p>
          Look it over: once it is recorded, a yes stays on record until a clinician has cleared it.
          Tap what is wrong.
        </p>
        {urgentAnswers(answers, questions).map((words) => (
          <p key={words} class="notice urgent" role="alert">
            {words}
          </p>
        ))}
        {lists.map(({ title, list }) => (
          <section key={title} class="stack" hidden={list.length === 0}>
            <h2 class="section-title">
              {title} ({list.length})
            </h2>
            <ol class="set-list">
              {list.map((question) => (
                <li key={question.key}>
                  <button
                    type="button"
                    class="set-row review-row"
                    onClick={() => onChange(screening.indexOf(question))}
                  >
                    <span>{question.text}</span>
                    <strong>{answerInWords(question, answers[question.key])}</strong>
                  </button>
                </li>
              ))}
            </ol>
          </section>
        ))}
      </main>
      <section class="set-panel" aria-label="Record">
        <button
          type="button"
          class="button main record"
          disabled={!armed || firstOpen(screening, answers) !== null}
          onClick={onRecord}
        >
          Record for your coach
        </button>
      </section>
    </>
  );
}
