/** What the phone says of screening by itself: whether it is asked for, and what cannot wait. */
import type { Questions, Standing } from "../../api/screening";
import { is } from "../entry";
import type { Placed } from "../ledger-view";
import { doNow, isUrgent, urgencyOf } from "./after-check";
import { answersIn, isScreening } from "./answers";

export interface Known {
  readonly questions: Questions;
  readonly standing: Standing;
  readonly entries: readonly Placed[];
}

/** What the standing has not taken in yet. */
export function unread({ standing, entries }: Known): Placed[] {
  return entries.filter(({ position }) => position === null || position > standing.through);
}

/** A screening was answered here and the coach has not seen it. */
export function isOnItsWay(known: Known): boolean {
  return unread(known).some((placed) => {
    const answers = answersIn(placed);
    return answers !== null && isScreening(answers, known.questions);
  });
}

/** The coach wants it answered: for the first time, or anew. */
export function isAsked(known: Known, today: string): boolean {
  const { answered_on, outcome, until } = known.standing;
  if (isOnItsWay(known)) return false;
  return answered_on === null || outcome === "incomplete" || (until !== null && today > until);
}

/** What cannot wait: from the server, and from what was told here since. */
export function urgentWords(known: Known): string[] {
  const since = unread(known).flatMap((placed) => urgentIn(placed, known.questions));
  return [...new Set([...since, ...known.standing.do_now])];
}

function urgentIn(placed: Placed, questions: Questions): string[] {
  const { entry } = placed;
  if (is(entry, "after.check")) {
    const { signs, hours } = entry.body;
    const urgent = isUrgent(urgencyOf(signs, questions.after_signs, hours));
    return urgent ? doNow(signs, hours, questions) : [];
  }
  if (is(entry, "session.stopped") && entry.body.signs) {
    const urgency = urgencyOf(entry.body.signs, questions.stop_signs);
    return isUrgent(urgency) ? [questions.do_now[urgency]] : [];
  }
  return urgentAnswers(answersIn(placed) ?? {}, questions);
}

/** Yes, or not sure, to a question that cannot wait. */
export function urgentAnswers(
  answers: Readonly<Record<string, unknown>>,
  { screening, today }: Questions,
): string[] {
  const found = [...screening, ...today].flatMap(({ key, urgent }) =>
    urgent && (answers[key] === "yes" || answers[key] === "not-sure") ? [urgent] : [],
  );
  return [...new Set(found)];
}
