// @vitest-environment node
import { describe, expect, test } from "vitest";

import { SHEET } from "../../../tests/fakes/phone";
import type { Advice } from "../../offline/session-walk";
import { reasonInWords, riseInWords } from "./advice";
import { headline, task } from "./loads";
import { figure, mass, plateFigure } from "./mass";
import { targetInWords } from "./sets";
import { sendable } from "./text";
import { duration, minutesSeconds, relativeDay } from "./times";

const KG = { pounds: false };
const LB = { pounds: true };

describe("masses", () => {
  test.each([
    [92.5, "92.5 kg"],
    [100, "100 kg"],
    [31.25, "31.25 kg"],
    [58.437, "58.4 kg"],
  ])("%d kg reads %s", (kg, words) => {
    expect(mass(kg, KG)).toBe(words);
  });

  // 1 lb = 0.45359237 kg exactly (international agreement of 1959).
  test.each([
    [0.45359237 * 225, "225"],
    [100, "220.5"],
    [20, "44"],
  ])("%d kg are %s lb, to the nearest half", (kg, words) => {
    expect(figure(kg, LB)).toBe(words);
  });

  test("a plate keeps the number that is cast into it", () => {
    expect(plateFigure(20.41165665, LB)).toBe("45");
    expect(plateFigure(20, LB)).toBe("20 kg");
    expect(plateFigure(1.25, KG)).toBe("1.25");
  });
});

describe("what is asked for", () => {
  test.each([
    [{ reps: 5, rir: 2 }, "5 reps, 2 in reserve"],
    [{ reps: 1 }, "1 rep"],
    [{ reps: 30, to_failure: true, rir: 0 }, "to failure, aim for 30"],
    [{ seconds: 40 }, "40 s"],
    [{ blocks: [2, 2, 2] }, "blocks of 2 + 2 + 2"],
    [{ distance_m: 60 }, "60 m"],
    [{}, "as you see fit"],
  ])("%o reads %s", (target, words) => {
    expect(targetInWords(target)).toBe(words);
  });

  test("says each side where it is one-sided", () => {
    const [exercise] = SHEET.exercises;
    if (!exercise) throw new Error("the sheet has an exercise");
    expect(targetInWords({ reps: 8 }, { ...exercise, method: "one-sided" })).toBe(
      "8 reps, each side",
    );
  });
});

describe("the suggestion", () => {
  const advice = (rise: number, reason: Advice["suggestion"]["reason"]): Advice => ({
    rise,
    suggestion: { index: 3, notch: 440, reason },
  });
  const done = (reps: number, rir: number) => ({
    set: { key: "a-1", number: 1, target: { reps: 5, rir: 2 } },
    record: {
      conflict: false,
      addedTo: null,
      entry: {
        id: "",
        v: 1,
        replaces: null,
        at: "",
        revision: 1,
        session: "",
        set: "a-1",
        kind: "set.done" as const,
        body: { load_kg: 80, reps, rir },
      },
    },
  });

  test.each([
    [advice(2, "up"), "Two notches up"],
    [advice(-1, "down"), "One notch down"],
    [advice(0, "same"), "The plan stands"],
    [advice(0, "hold"), "Your coach holds the plan"],
  ])("says by how much", (given, words) => {
    expect(riseInWords(given)).toBe(words);
  });

  test.each([
    [5, 4, "5 reps with 4 in reserve, planned 2"],
    [6, 2, "6 reps with 2 in reserve, planned 5"],
    [4, 0, "4 reps with 0 in reserve, planned 5 with 2"],
    [5, 2, "5 reps with 2 in reserve: a higher maximum"],
  ])("says why: %i reps with %i in reserve", (reps, rir, words) => {
    expect(reasonInWords(advice(1, "up"), done(reps, rir))).toBe(words);
  });

  test("says that a set was as planned where the plan stands", () => {
    const words = reasonInWords(advice(0, "same"), done(5, 2));
    expect(words).toBe("5 reps with 2 in reserve, as planned");
  });

  test("says what limits it", () => {
    expect(reasonInWords(advice(2, "upper-bound"), done(5, 4))).toContain("your coach's limit");
  });
});

describe("what to hang", () => {
  const BAR = { kind: "straight-bar", name: "Steel bar", sides: 2 };
  const load = { kg: 95, position: 0, side: [20, 10, 2.5] };

  test.each([
    [[], "Put on 20, 10, 2.5, each side."],
    [[20, 10], "Put on 2.5, each side."],
    [[20, 10, 5], "Take off 5, then put on 2.5, each side."],
    [[20, 10, 2.5, 1.25], "Take off 1.25, each side."],
    [[20, 10, 2.5], "Same plates as before."],
  ])("when %o hangs there", (side, words) => {
    expect(task(BAR, load, { side, known: true }, KG)?.text).toBe(words);
  });

  test("reads the pin of a stack and the number of each dumbbell", () => {
    const pin = { kg: 58.437, position: 0, pin_kg: 55 };
    expect(headline({ kind: "stack", name: "" }, pin, KG)).toMatchObject({
      before: "Pin at",
      figure: "55",
    });
    const pair = { kg: 20, position: 0, piece_kg: 20 };
    expect(headline({ kind: "dumbbells", name: "" }, pair, KG)).toMatchObject({
      before: "2 ×",
      figure: "20",
    });
  });
});

describe("times", () => {
  test("are minutes and seconds on a clock, and words in a sentence", () => {
    expect([75, 600, 9].map(minutesSeconds)).toStrictEqual(["1:15", "10:00", "0:09"]);
    expect([40, 90, 125].map(duration)).toStrictEqual(["40 s", "1 min 30 s", "2 min 5 s"]);
  });

  test("days are told from today, across a change of the clocks too", () => {
    const noon = (day: string) => new Date(`${day}T12:00:00`).getTime();
    const now = noon("2026-03-30");
    expect(relativeDay(now, now)).toBe("today");
    expect(relativeDay(noon("2026-03-29"), now)).toBe("yesterday");
    expect(relativeDay(noon("2026-03-31"), now)).toBe("tomorrow");
    expect(relativeDay(noon("2026-03-25"), now)).toBe("Wednesday");
  });
});

describe("a word for the coach", () => {
  test("goes without NUL, halves of characters and outer spaces, and with everything else", () => {
    expect(sendable("  gut\0 \ud83d gemacht 🏔 ")).toBe("gut  gemacht 🏔");
    expect(sendable(" \n ")).toBe("");
  });
});
