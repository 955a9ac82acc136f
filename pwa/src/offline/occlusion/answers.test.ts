import { describe, expect, test } from "vitest";

import { QUESTIONS, WELL_TODAY } from "../../../tests/fakes/occlusion";
import type { Question } from "../../api/screening";
import { asked, closing, firstOpen, fits, isScreening, isWhole, stepped, stepsOf } from "./answers";

function question(key: string): Question {
  const found = QUESTIONS.screening.find((each) => each.key === key);
  if (!found) throw new Error(`there is no question ${key}`);
  return found;
}

describe("answers on their way", () => {
  test("the first open question is where the athlete left off", () => {
    const [first, second] = QUESTIONS.screening;
    if (!first || !second) throw new Error("there are questions");
    expect(firstOpen(QUESTIONS.screening, {})).toBe(0);
    expect(firstOpen(QUESTIONS.screening, { [first.key]: "not-sure" })).toBe(1);
    expect(firstOpen(QUESTIONS.today, WELL_TODAY)).toBeNull();
  });

  test("not sure is a full answer; an empty date, or a number out of bounds, is none", () => {
    expect(fits(question("clot"), "not-sure")).toBe(true);
    expect(fits(question("clot"), "perhaps")).toBe(false);
    expect(fits(question("born"), "")).toBe(false);
    expect(fits(question("born"), "1996-05-01")).toBe(true);
    expect(fits(question("systolic"), 300)).toBe(false);
    expect(fits(question("sex"), "not-said")).toBe(true);
  });

  test("numbers begin within their bounds and are stepped to clean figures", () => {
    for (const one of QUESTIONS.screening.filter(({ kind }) => kind === "number")) {
      expect(fits(one, stepsOf(one).from)).toBe(true);
    }
    const height = question("height_m");
    expect(stepped(height, 1.72, 0.01)).toBe(1.73);
    expect(stepped(height, 2.49, 0.1)).toBe(2.5);
    expect(stepped(question("mass_kg"), 32, -10)).toBe(30);
  });

  test("what is recorded is what is asked, in that order", () => {
    const answers = { "alone-today": "no", ...WELL_TODAY, gone: "yes" };
    expect(Object.keys(asked(QUESTIONS.today, answers))).toStrictEqual(
      QUESTIONS.today.map(({ key }) => key),
    );
  });

  test("one question of the screening among them makes it a screening", () => {
    expect(isScreening({ ...WELL_TODAY, clot: "no" }, QUESTIONS)).toBe(true);
    expect(isScreening(WELL_TODAY, QUESTIONS)).toBe(false);
    expect(isWhole(WELL_TODAY, QUESTIONS.today)).toBe(true);
  });

  test("a question that nobody knows closes the day", () => {
    expect(closing({ ...WELL_TODAY, moon: "no" }, QUESTIONS.today, false)).toHaveLength(1);
  });
});
