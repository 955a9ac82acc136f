import { describe, expect, test } from "vitest";

import { OPEN, QUESTIONS, TODAY, told, WELL_TODAY } from "../../../tests/fakes/occlusion";
import type { Standing } from "../../api/screening";
import type { Placed } from "../ledger-view";
import { isAsked, urgentWords } from "./standing";

function known(entries: readonly Placed[] = [], more: Partial<Standing> = {}) {
  return { questions: QUESTIONS, standing: { ...OPEN, ...more }, entries };
}

describe("whether the screening is asked for", () => {
  test("the first time, anew when it is out of date, and not while one is on its way", () => {
    const never = { answered_on: null, open: false } as const;
    const answered = told("screening.answered", { answers: { clot: "no" } });
    expect(isAsked(known([], never), TODAY)).toBe(true);
    expect(isAsked(known([answered], never), TODAY)).toBe(false);
    expect(isAsked(known(), TODAY)).toBe(false);
    expect(isAsked(known(), "2026-07-02")).toBe(true);
    expect(isAsked(known([], { outcome: "incomplete" }), TODAY)).toBe(true);
    expect(isAsked(known([], { outcome: "needs-reading" }), TODAY)).toBe(false);
  });
});

describe("what cannot wait", () => {
  test("comes from the server, and from what was told here since", () => {
    const words = QUESTIONS.do_now;
    expect(urgentWords(known([], { do_now: ["Go now."] }))).toStrictEqual(["Go now."]);
    const check = told("after.check", { hours: 24, signs: ["dark-urine"] });
    expect(urgentWords(known([check]))[0]).toBe(words["see-today"]);
    const stop = told("session.stopped", { why: "sign", signs: ["chest-pain"] });
    expect(urgentWords(known([stop]))).toStrictEqual([words.emergency]);
    expect(urgentWords(known([{ ...stop, position: 9 }]))).toStrictEqual([]);
  });

  test("a grave answer of the day is among it, an ordinary one is not", () => {
    const today = (key: string) =>
      told("screening.answered", { answers: { ...WELL_TODAY, [key]: "yes" } });
    expect(urgentWords(known([today("one-limb")]))).toHaveLength(1);
    expect(urgentWords(known([today("alcohol")]))).toStrictEqual([]);
  });
});
