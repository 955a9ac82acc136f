import { describe, expect, test } from "vitest";

import {
  ARMS,
  CURL,
  fixture,
  IN_ARMS,
  NOON,
  OPEN,
  QUESTIONS,
  TODAY,
  told,
  WELL_TODAY,
} from "../../../tests/fakes/occlusion";
import type { Answers } from "../../api/screening";
import type { SheetExercise } from "../../api/types";
import type { Placed } from "../ledger-view";
import { dayRefusals, type Refusal, refusals, type SheetLock, type Start } from "./lock";

interface Case {
  readonly name: string;
  readonly sheet: SheetLock;
  readonly on: string;
  readonly today: Answers | null;
  readonly missing: readonly string[];
  readonly after_check_due: boolean;
  readonly may_start: boolean;
}

const { cases } = fixture("screening/today.json") as { readonly cases: Case[] };

const HOUR = 3_600_000;
const MINUTE = 60_000;
const SECOND = 1_000;

describe("the lock of the sheet and of the day", () => {
  test.each(cases)("$name: as the server has it", (one) => {
    const given = Object.entries({ ...WELL_TODAY, ...one.today });
    const answers = Object.fromEntries(given.filter(([key]) => !one.missing.includes(key)));
    const found = dayRefusals(one.sheet, {
      on: one.on,
      answered: one.today === null ? [] : [answers],
      questions: QUESTIONS.today,
      checkDue: one.after_check_due,
    });
    expect(found.length === 0).toBe(one.may_start);
  });
});

const ANSWERED = told("screening.answered", { answers: WELL_TODAY }, -MINUTE);

function start(entries: readonly Placed[], more: Partial<Start> = {}): Refusal[] {
  return refusals({
    exercise: CURL,
    session: ARMS.session,
    now: NOON,
    steady: more.now ?? NOON,
    today: TODAY,
    questions: QUESTIONS,
    standing: OPEN,
    entries: [ANSWERED, ...entries],
    sheets: [ARMS],
    ...more,
  });
}

function rules(entries: readonly Placed[], more: Partial<Start> = {}): string[] {
  return start(entries, more).map(({ rule }) => rule);
}

function curl(occlusion: Partial<NonNullable<SheetExercise["occlusion"]>>): Partial<Start> {
  const limits = CURL.occlusion;
  if (!limits) throw new Error("the curl has limits");
  return { exercise: { ...CURL, occlusion: { ...limits, ...occlusion } } };
}

describe("the lock on this phone", () => {
  test("is open when all is well, and every refusal says why and what opens it", () => {
    expect(start([])).toStrictEqual([]);
    for (const { why, opens, at } of start([], { entries: [], today: "2026-08-01" })) {
      expect(why).toMatch(/[.”]$/);
      expect(opens || at).toBeTruthy();
    }
  });

  test("keeps to a sheet that is locked, and to one without limits", () => {
    expect(rules([], { exercise: { ...CURL, locked: "Locked: a clot." } })).toStrictEqual([
      "locked",
    ]);
    const { occlusion: _, ...bare } = CURL;
    expect(rules([], { exercise: bare })).toStrictEqual(["locked"]);
  });

  test("keeps to what the server says now, whatever the sheet of a session begun says", () => {
    const standing = { ...OPEN, open: false, why: ["chest pain"], what_opens_it: ["clearance"] };
    const [first] = start([], { standing });
    expect(first).toMatchObject({ rule: "locked", opens: "Clearance." });
    expect(first?.why).toContain("chest pain");
  });

  test("ends with the last day of the screening", () => {
    expect(rules([], curl({ until: TODAY }))).toStrictEqual([]);
    expect(rules([], curl({ until: "2026-02-01" }))).toStrictEqual(["expired"]);
  });

  test("after weeks away the set list is too much to begin again with", () => {
    const far = curl({ holds_until: "2026-02-01", away_days: 21 });
    const off = (days: number) =>
      told("wrap.off", { limb: "left-upper-arm", seconds: 60 }, -days * 24 * HOUR, {
        session: "w1-mon",
      });
    const checked = () => told("after.check", { hours: 72, signs: [] }, -HOUR);
    expect(rules([], curl({ holds_until: TODAY }))).toStrictEqual([]);
    expect(rules([], far)).toStrictEqual(["away"]);
    expect(rules([off(21), checked()], far)).toStrictEqual(["away"]);
    expect(rules([off(20), checked()], far)).toStrictEqual([]);
  });

  test("a yes of today stays, whatever is answered later that day", () => {
    const yes = told("screening.answered", { answers: { ...WELL_TODAY, fever: "yes" } });
    expect(rules([yes, told("screening.answered", { answers: WELL_TODAY })])).toStrictEqual([
      "day",
    ]);
  });

  test("an answer of another day does for none but its own", () => {
    const before = told("screening.answered", { answers: WELL_TODAY }, -24 * HOUR);
    expect(rules([], { entries: [before] })).toStrictEqual(["today"]);
  });

  test("a fever of yesterday asks for a new screening until the server has taken it in", () => {
    const answers = { ...WELL_TODAY, fever: "not-sure" };
    const fever = (position?: number) =>
      told("screening.answered", { answers }, -24 * HOUR, position ? { position } : {});
    expect(rules([fever()])).toStrictEqual(["unread"]);
    expect(rules([fever(11)])).toStrictEqual(["unread"]);
    expect(rules([fever(10)])).toStrictEqual([]);
  });

  test("alcohol of yesterday is over", () => {
    const answers = { ...WELL_TODAY, alcohol: "yes" };
    expect(rules([told("screening.answered", { answers }, -24 * HOUR)])).toStrictEqual([]);
  });

  test("a new screening closes it until the coach has read it", () => {
    const entry = told("screening.answered", { answers: { clot: "no" } });
    expect(rules([entry])).toStrictEqual(["unread"]);
    expect(rules([{ ...entry, position: 9 }])).toStrictEqual([]);
  });

  test("one urgent sign after the work closes it at once, soreness does not", () => {
    const sign = (key: string) => told("after.check", { hours: 24, signs: [key] }, -HOUR);
    expect(rules([sign("dark-urine")])).toStrictEqual(["unread"]);
    expect(rules([sign("sore")])).toStrictEqual([]);
    expect(rules([sign("sore-worse")])).toStrictEqual([]);
    expect(rules([sign("never-heard-of")])).toStrictEqual(["unread"]);
  });

  test("a stop sign closes the day, a grave one more than that", () => {
    const stop = (key: string, after: number) =>
      told("session.stopped", { why: "warning sign", signs: [key] }, after, IN_ARMS);
    expect(rules([stop("dizzy", -HOUR)])).toStrictEqual(["stopped"]);
    expect(rules([stop("dizzy", -24 * HOUR)])).toStrictEqual([]);
    expect(rules([stop("chest-pain", -24 * HOUR)])).toStrictEqual(["unread"]);
  });

  test("numb late, or numb twice, closes the day", () => {
    const on = told("wrap.on", { limb: "left-upper-arm" }, -10 * MINUTE, IN_ARMS);
    const off = told("wrap.off", { limb: "left-upper-arm", seconds: 60 }, -9 * MINUTE, IN_ARMS);
    const numb = (after: number) => told("wrap.check", { numb: true }, after);
    expect(rules([on, numb(-9.5 * MINUTE), off])).toStrictEqual([]);
    expect(rules([on, numb(-9 * MINUTE), off])).toStrictEqual(["numb"]);
    expect(rules([on, numb(-9.5 * MINUTE), off, numb(-8 * MINUTE)])).toStrictEqual(["numb"]);
  });

  test("hours must lie between two sessions of arms; legs are another matter", () => {
    const off = (limb: string, hours: number) =>
      told("wrap.off", { limb, seconds: 60 }, -hours * HOUR, { session: "w1-mon" });
    const checked = () => told("after.check", { hours: 24, signs: [] }, -HOUR);
    expect(rules([off("left-upper-arm", 35), checked()])).toStrictEqual(["gap"]);
    expect(rules([off("left-upper-arm", 36), checked()])).toStrictEqual([]);
    expect(rules([off("thigh", 35), checked()])).toStrictEqual([]);
    expect(start([off("left-upper-arm", 35), checked()])[0]?.at).toBe(NOON + HOUR);
  });

  test("the other arm of the same session need not wait for hours, but for the break", () => {
    const off = (seconds: number) =>
      told("wrap.off", { limb: "left-upper-arm", seconds: 60 }, -seconds * SECOND, IN_ARMS);
    expect(start([off(179)])).toMatchObject([{ rule: "break", at: NOON + SECOND }]);
    expect(rules([off(180)])).toStrictEqual([]);
  });

  test("the questions after the last work come before the next", () => {
    const off = told("wrap.off", { limb: "thigh", seconds: 60 }, -49 * HOUR, { session: "w1-mon" });
    expect(rules([off])).toStrictEqual(["check"]);
    expect(rules([off, told("after.check", { hours: 24, signs: [] })])).toStrictEqual(["check"]);
    expect(rules([off, told("after.check", { hours: 48, signs: [] })])).toStrictEqual([]);
  });

  test("a session that has to be done first must have an occlusion set in it", () => {
    const more = { ...curl({ after: ["w1-mon"] }), sheets: [{ ...ARMS, session: "w1-mon" }] };
    const done = (set: string) =>
      told("set.done", { load_kg: 10, reps: 15, rir: null }, -HOUR, { session: "w1-mon", set });
    expect(rules([], more)).toStrictEqual(["after"]);
    expect(rules([done("a-1")], more)).toStrictEqual(["after"]);
    expect(rules([done("c-1")], more)).toStrictEqual([]);
  });

  test("a wrap that is still on comes off first", () => {
    const on = told("wrap.on", { limb: "thigh" }, -MINUTE, IN_ARMS);
    expect(rules([on])).toStrictEqual(["wrap-on"]);
  });
});
