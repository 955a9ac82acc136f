/** Where answers lead, in words and with a mark; as the server ranks them. */
import type { Finding, Outcome } from "../answers";

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  open: "open",
  "needs-reading": "needs reading",
  "not-today": "not now",
  incomplete: "incomplete",
  "doctor-first": "doctor first",
  clinical: "for the clinic",
  locked: "locked",
};

const MARKS: Readonly<Record<Outcome, Finding["severity"]>> = {
  open: "note",
  "needs-reading": "warn",
  "not-today": "warn",
  incomplete: "warn",
  "doctor-first": "stop",
  clinical: "stop",
  locked: "stop",
};

export function markOf(outcome: Outcome): Finding["severity"] {
  return MARKS[outcome];
}

/** Outcomes that no coach opens alone. */
export function needsClinician(outcome: Outcome): boolean {
  return MARKS[outcome] === "stop";
}

/** The outcome of an answer, null where it leads nowhere. */
export function leadsTo(outcome: string): Outcome | null {
  return outcome in OUTCOME_WORDS ? (outcome as Outcome) : null;
}
