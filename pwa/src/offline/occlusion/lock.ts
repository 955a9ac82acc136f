/**
 * The lock right before a wrap goes on: what the load sheet carries, and what this phone has heard since.
 * Nothing overrides it. The vectors in `fixtures/screening` hold it to the server's `lock.start_on`.
 */
import type { Answers, Question, Questions, Standing } from "../../api/screening";
import type { LoadSheet, SheetExercise, SheetOcclusion } from "../../api/types";
import { DAY_MS, MINUTE_MS, SECOND_MS } from "../clock";
import { countdown } from "../clocks";
import { is } from "../entry";
import { type Placed, steadyOf } from "../ledger-view";
import { checkDue, isUrgent, urgencyOf } from "./after-check";
import { answersIn, closing, isScreening, isWhole, lasts } from "./answers";
import { dayOf, msOf } from "./order";
import { isArm, lastOff, numbness, openWraps } from "./wear";

/** Which rule closes it, from the gravest to what a few minutes open. */
export type Rule =
  | "locked"
  | "expired"
  | "unread"
  | "stopped"
  | "numb"
  | "day"
  | "check"
  | "away"
  | "after"
  | "gap"
  | "wrap-on"
  | "today"
  | "break";

export interface Refusal {
  readonly rule: Rule;
  readonly why: string;
  readonly opens: string;
  /** When it opens by itself, by this phone's clock. */
  readonly at?: number;
  /** What cannot wait, whatever becomes of the training. */
  readonly urgent?: string;
}

/** What the sheet carries of the lock. */
export interface SheetLock {
  readonly open: boolean;
  readonly until: string | null;
  readonly company: boolean;
}

/** The days as the athlete's calendar has them, and every answer to the questions of that day. */
interface DayLock {
  readonly on: string;
  readonly answered: readonly Answers[];
  readonly questions: readonly Question[];
  readonly checkDue: boolean;
}

const ANOTHER_DAY = "Another day.";
const CLINICIAN = "A clinician's word that it may go on, which your coach records.";

/** Sheet and answers of the day: the part that phone and server must agree on. */
export function dayRefusals(sheet: SheetLock, day: DayLock): Refusal[] {
  const found: Refusal[] = [];
  const add = (rule: Rule, why: string, opens: string) => found.push({ rule, why, opens });
  if (!sheet.open) add("locked", "Occlusion work is locked.", "Your coach sees why at the desk.");
  if (sheet.until !== null && day.on > sheet.until)
    add("expired", `Your screening counted until ${sheet.until}.`, "The screening, answered anew.");
  for (const one of day.answered.flatMap((a) => closing(a, day.questions, sheet.company))) {
    const urgent = one.urgent !== undefined && { urgent: one.urgent };
    found.push({ rule: "day", why: notNo("Today you", one), opens: opening(one), ...urgent });
  }
  if (day.checkDue)
    add("check", "The questions after your last occlusion work are open.", "Your answers.");
  if (!day.answered.some((answers) => isWhole(answers, day.questions)))
    add("today", "The questions of the day are open.", "An answer to each of them.");
  return found;
}

function notNo(who: string, { text }: Question): string {
  return `${who} did not say no to “${text}”`;
}

function opening(question: Question): string {
  if (question.key === "alone-today") return "Somebody with you who could take the wraps off.";
  if (!lasts(question)) return ANOTHER_DAY;
  return question.outcome === "locked" ? CLINICIAN : "The screening, answered anew.";
}

export interface Start {
  readonly exercise: SheetExercise;
  readonly session: string;
  readonly now: number;
  /** The same moment on the steady clock. */
  readonly steady: number;
  /** The calendar day of `now`. */
  readonly today: string;
  readonly questions: Questions;
  readonly standing: Standing;
  readonly entries: readonly Placed[];
  /** Every sheet that the phone has, those of sessions done among them. */
  readonly sheets: readonly LoadSheet[];
}

/** Everything that keeps the next wrap from going on, the gravest first; nothing: it may. */
export function refusals(start: Start): Refusal[] {
  const { exercise, today, questions, entries } = start;
  const { locked, occlusion } = exercise;
  if (locked || !occlusion) return [refusal("locked", locked ?? NO_LIMITS, "")];
  const sheet = { open: true, until: occlusion.until ?? null, company: occlusion.company ?? false };
  const days = dayRefusals(sheet, {
    on: today,
    answered: answeredOn(start),
    questions: questions.today,
    checkDue: checkDue(entries, questions.after_hours, start.now) !== null,
  });
  return [...standingRefusals(start), ...days, ...clockRefusals(start, occlusion)].toSorted(
    (one, other) => ORDER.indexOf(one.rule) - ORDER.indexOf(other.rule),
  );
}

const NO_LIMITS = "This exercise came without its limits.";

const ORDER: readonly Rule[] = [
  "locked",
  "expired",
  "unread",
  "stopped",
  "numb",
  "day",
  "check",
  "away",
  "after",
  "gap",
  "wrap-on",
  "break",
  "today",
];

function refusal(rule: Rule, why: string, opens: string, at?: number): Refusal {
  return { rule, why, opens, ...(at !== undefined && { at }) };
}

/** Every answer of today to the questions of the day. */
function answeredOn({ entries, today, questions }: Start): Answers[] {
  return entries
    .filter((placed) => dayOf(placed) === today)
    .flatMap((placed) => {
      const answers = answersIn(placed);
      return answers && !isScreening(answers, questions) ? [answers] : [];
    });
}

function* standingRefusals(start: Start): Generator<Refusal> {
  const { standing, today, entries, questions } = start;
  if (!standing.open) {
    const [why = "nothing is on record"] = standing.why;
    const [opens = "your coach's word"] = standing.what_opens_it;
    yield refusal("locked", `Occlusion work is locked: ${why}.`, sentence(opens));
  }
  if (standing.until !== null && today > standing.until)
    yield refusal("expired", `Your screening counted until ${standing.until}.`, "Answer it anew.");
  for (const placed of entries) {
    if (placed.position === null || placed.position > standing.through)
      yield* unread(placed, start);
    const { entry } = placed;
    if (is(entry, "session.stopped") && entry.body.signs?.length && dayOf(placed) === today)
      yield refusal(
        "stopped",
        `You stopped today: ${signsIn(entry.body.signs, start)}.`,
        ANOTHER_DAY,
      );
  }
  if (numbness(entries, today, questions.numb) === "closed")
    yield refusal("numb", "A limb went numb today.", ANOTHER_DAY);
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

const READING = "A network, then your coach's reading.";

/** What the server has not taken in yet, and would lock it. */
function* unread(placed: Placed, start: Start): Generator<Refusal> {
  const { entry } = placed;
  const { questions, today } = start;
  const answers = answersIn(placed);
  if (answers && isScreening(answers, questions))
    yield refusal("unread", "Your coach has not read your new screening.", READING);
  else if (answers && dayOf(placed) !== today) {
    const left = closing(answers, questions.today, false).filter(lasts);
    for (const one of left) yield refusal("unread", notNo("You", one), opening(one));
  }
  if (is(entry, "after.check")) {
    const { signs, hours } = entry.body;
    if (isUrgent(urgencyOf(signs, questions.after_signs, hours)))
      yield refusal("unread", `After the work: ${signsIn(signs, start)}.`, CLINICIAN);
  }
  if (is(entry, "session.stopped")) {
    const grave = (entry.body.signs ?? []).filter((key) => isGrave(key, questions));
    if (grave.length > 0)
      yield refusal("unread", `You stopped: ${signsIn(grave, start)}.`, CLINICIAN);
  }
}

/** A sign that this phone does not know is taken for a grave one. */
function isGrave(key: string, { stop_signs }: Questions): boolean {
  return (stop_signs.find((sign) => sign.key === key)?.outcome ?? "locked") === "locked";
}

function signsIn(keys: readonly string[], { questions }: Start): string {
  const known = [...questions.stop_signs, ...questions.after_signs];
  return keys.map((key) => known.find((sign) => sign.key === key)?.text ?? key).join(", ");
}

function* clockRefusals(start: Start, occlusion: SheetOcclusion): Generator<Refusal> {
  const { exercise, entries, session, now, steady } = start;
  if (isAway(start, occlusion))
    yield refusal(
      "away",
      "You have been away from it for weeks: this is too much to begin again with.",
      "Your coach sends less of it, from a new Monday on.",
    );
  for (const before of (occlusion.after ?? []).filter((key) => !wasDone(key, start)))
    yield refusal(
      "after",
      `${nameOf(before, start)} comes first: the first sessions build up.`,
      "That session, done.",
    );
  const limb = limbOf(exercise);
  const off = lastOff(entries, { arm: isArm(limb), notIn: session });
  const gapEnds = off === null ? 0 : msOf(off) + occlusion.gap_h * 60 * MINUTE_MS;
  if (now < gapEnds) {
    const limbs = isArm(limb) ? "arms" : "legs";
    yield refusal(
      "gap",
      `Your ${limbs} need ${occlusion.gap_h} hours between two sessions.`,
      "",
      gapEnds,
    );
  }
  if (openWraps(entries).length > 0)
    yield refusal("wrap-on", "Another wrap is still on.", "Take it off first.");
  const last = lastOff(entries);
  const pause = countdown(occlusion.break_s, last && steadyOf(last), steady);
  if (pause?.phase === "running")
    yield refusal("break", "Wraps stay off for a while now.", "", now + pause.leftS * SECOND_MS);
}

/** Longer without such work than the sheet reckoned with, and than this phone knows of since. */
function isAway({ exercise, entries, now, today }: Start, occlusion: SheetOcclusion): boolean {
  const { holds_until, away_days } = occlusion;
  if (!holds_until || today <= holds_until) return false;
  const last = lastOff(entries, { arm: isArm(limbOf(exercise)) });
  return last === null || now >= msOf(last) + away_days * DAY_MS;
}

function limbOf({ details }: SheetExercise): string {
  return details && "limb" in details ? details.limb : "";
}

/** An occlusion set was recorded in that session. */
function wasDone(session: string, { entries, sheets }: Start): boolean {
  const keys = new Set(
    sheets
      .filter((sheet) => sheet.session === session)
      .flatMap((sheet) => sheet.exercises)
      .filter(({ method }) => method === "occlusion")
      .flatMap((exercise) => exercise.sets.map(({ key }) => key)),
  );
  return entries.some(
    ({ entry }) => is(entry, "set.done") && entry.session === session && keys.has(entry.set ?? ""),
  );
}

function nameOf(session: string, { sheets }: Start): string {
  return sheets.find((sheet) => sheet.session === session)?.name ?? session;
}
