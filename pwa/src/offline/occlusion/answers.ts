/** Answers on their way: what is open, where a number begins, and what the day's answers close. */
import type { Answer, Answers, Outcome, Question, Questions } from "../../api/screening";
import { is } from "../entry";
import type { Placed } from "../ledger-view";

const REPLIES: readonly unknown[] = ["yes", "no", "not-sure"];

/** Outcomes that stay, whatever is answered later, until a clearance is recorded. */
const FOR_A_CLINICIAN: ReadonlySet<Outcome> = new Set(["doctor-first", "clinical", "locked"]);

/** The first question without an answer; null once all have one. */
export function firstOpen(questions: readonly Question[], answers: Answers): number | null {
  const index = questions.findIndex((question) => !fits(question, answers[question.key]));
  return index < 0 ? null : index;
}

export function fits(question: Question, answer: Answer | undefined): boolean {
  switch (question.kind) {
    case "yes-no":
      return REPLIES.includes(answer);
    case "choice":
      return question.choices?.includes(String(answer)) ?? false;
    case "date":
      return typeof answer === "string" && !Number.isNaN(Date.parse(answer));
    case "number":
      return (
        typeof answer === "number" &&
        answer >= (question.least ?? -Infinity) &&
        answer <= (question.most ?? Infinity)
      );
  }
}

/** Only what is asked, in the order in which it is asked. */
export function asked(questions: readonly Question[], answers: Answers): Answers {
  return Object.fromEntries(
    questions.flatMap(({ key }) => {
      const answer = answers[key];
      return answer === undefined ? [] : [[key, answer]];
    }),
  );
}

interface Steps {
  /** What is shown before the first tap; no answer until it is confirmed. */
  readonly from: number;
  readonly fine: number;
  readonly coarse: number;
}

/** Our own choice: the middle of what grown-ups say. */
const STEPS: Readonly<Record<string, Steps>> = {
  height_m: { from: 1.72, fine: 0.01, coarse: 0.1 },
  mass_kg: { from: 75, fine: 1, coarse: 10 },
  systolic: { from: 120, fine: 1, coarse: 10 },
  diastolic: { from: 80, fine: 1, coarse: 10 },
};

export function stepsOf({ key, least = 0, most = 100 }: Question): Steps {
  return STEPS[key] ?? { from: Math.round((least + most) / 2), fine: 1, coarse: 10 };
}

/** Rounded to the fine step, within bounds. */
export function stepped(question: Question, value: number, by: number): number {
  const { least = -Infinity, most = Infinity } = question;
  const { fine } = stepsOf(question);
  const next = Math.round((value + by) / fine) * fine;
  return Number(Math.min(most, Math.max(least, next)).toFixed(2));
}

/** A screening as soon as it answers one question of it, or none that is known. */
export function isScreening(answers: Answers, questions: Questions): boolean {
  const keys = Object.keys(answers);
  const known = (list: readonly Question[]) => list.some(({ key }) => keys.includes(key));
  return known(questions.screening) || !known(questions.today);
}

export function answersIn({ entry }: Placed): Answers | null {
  return is(entry, "screening.answered") ? entry.body.answers : null;
}

/** Every question of the day has an answer. */
export function isWhole(answers: Answers, today: readonly Question[]): boolean {
  return today.every((question) => fits(question, answers[question.key]));
}

/** Questions of the day whose answer closes that day; not sure counts as yes. */
export function closing(
  answers: Answers,
  today: readonly Question[],
  company: boolean,
): Question[] {
  const closed = today.filter(({ key, outcome }) => {
    const answer = answers[key];
    if (answer === undefined || answer === "no") return false;
    if (!REPLIES.includes(answer)) return true;
    return outcome !== "open" || (company && key === "alone-today");
  });
  const unknown = Object.keys(answers).filter((key) => !today.some((each) => each.key === key));
  return [...closed, ...unknown.map((key): Question => ({ key, text: key, kind: "yes-no" }))];
}

/** Does this answer of the day close more than the day? */
export function lasts({ outcome, renews }: Question): boolean {
  if (outcome === undefined || outcome === "incomplete") return true;
  return renews === true || FOR_A_CLINICIAN.has(outcome);
}
