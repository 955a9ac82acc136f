/** What the feed says of screening: its questions and signs, and how the lock stands. */

export type Outcome =
  | "open"
  | "needs-reading"
  | "not-today"
  | "incomplete"
  | "doctor-first"
  | "clinical"
  | "locked";

export type Urgency = "none" | "leave-off" | "see-today" | "emergency";

export interface Question {
  readonly key: string;
  readonly text: string;
  readonly kind: "yes-no" | "number" | "date" | "choice";
  /** Where yes, and not sure, lead. */
  readonly outcome?: Outcome;
  /** Yes makes the screening out of date. */
  readonly renews?: boolean;
  /** What to do now, whatever becomes of the training. */
  readonly urgent?: string;
  readonly least?: number;
  readonly most?: number;
  readonly unit?: string;
  readonly choices?: readonly string[];
}

export interface StopSign {
  readonly key: string;
  readonly text: string;
  readonly urgency: Urgency;
  readonly outcome: Outcome;
}

export interface AfterSign {
  readonly key: string;
  readonly text: string;
  readonly urgency: Urgency;
  /** Before so many hours it is ordinary. */
  readonly from_h: number;
}

export interface NumbRules {
  readonly asked_s: number;
  readonly early_s: number;
  readonly clears_s: number;
  readonly go_on: string;
  readonly off_then_looser: string;
  readonly off_for_today: string;
}

export interface Questions {
  readonly screening: readonly Question[];
  readonly today: readonly Question[];
  readonly stop_signs: readonly StopSign[];
  readonly after_signs: readonly AfterSign[];
  readonly after_hours: readonly number[];
  readonly after_advice: Readonly<Record<string, string>>;
  readonly do_now: Readonly<Record<Urgency, string>>;
  readonly order: readonly string[];
  readonly two_lines: readonly string[];
  readonly how: readonly string[];
  readonly tightness: readonly { readonly value: number; readonly text: string }[];
  readonly numb: NumbRules;
}

/** How the lock stands on the day of the last record. */
export interface Standing {
  readonly open: boolean;
  readonly outcome: Outcome;
  readonly why: readonly string[];
  readonly what_opens_it: readonly string[];
  readonly do_now: readonly string[];
  readonly until: string | null;
  readonly company: boolean;
  readonly answered_on: string | null;
  /** Up to which position of the ledger entries are in it. */
  readonly through: number;
}

export type Answer = string | number;
export type Answers = Readonly<Record<string, Answer>>;
