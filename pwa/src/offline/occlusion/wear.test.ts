import { describe, expect, test } from "vitest";

import { IN_ARMS, NOON, QUESTIONS, TODAY, told } from "../../../tests/fakes/occlusion";
import { checkDue, doNow } from "./after-check";
import { lastOff, numbness, openWraps, wornS } from "./wear";

const SECOND = 1_000;
const HOUR = 3_600_000;
const LEFT = { limb: "left-upper-arm" };

function off(after: number) {
  return told("wrap.off", { ...LEFT, seconds: 60 }, after, IN_ARMS);
}

/** A wrap that went on at noon; so many milliseconds after it. */
function worn({ now, steady, lostAt }: { now: number; steady: number; lostAt?: number }) {
  const times = { now: NOON + now, steady: NOON + steady };
  const lost = lostAt === undefined ? null : NOON + lostAt;
  return wornS({ onAt: NOON, steadyOn: NOON }, { ...times, lostAt: lost });
}

describe("the wear clock", () => {
  test("goes by the time of day", () => {
    expect(worn({ now: 61_500, steady: 61_500 })).toBe(61);
  });

  test("takes what was counted where the phone's clock was set back", () => {
    expect(worn({ now: -HOUR, steady: 90 * SECOND })).toBe(90);
  });

  test("says that it does not know where nobody has counted", () => {
    expect(worn({ now: -HOUR, steady: -HOUR })).toBeNull();
  });

  test("nor where it was set back out of view, where the phone may have slept", () => {
    expect(worn({ now: -HOUR, steady: 90 * SECOND, lostAt: 60 * SECOND })).toBeNull();
    expect(worn({ now: -HOUR, steady: 90 * SECOND, lostAt: -60 * SECOND })).toBe(90);
  });

  test("a clock set forward makes it longer, never shorter", () => {
    expect(worn({ now: HOUR, steady: 90 * SECOND })).toBe(3_600);
  });
});

describe("wraps that are on", () => {
  test("until they are taken off", () => {
    const on = told("wrap.on", LEFT, 0, { ...IN_ARMS, set: "c-1" });
    expect(openWraps([on])).toMatchObject([{ ...LEFT, set: "c-1", onAt: NOON, asked: false }]);
    expect(openWraps([on, off(SECOND)])).toStrictEqual([]);
  });

  test("also where the clock was set back in between", () => {
    const on = told("wrap.on", LEFT, 0, IN_ARMS);
    expect(openWraps([off(-HOUR), on].toReversed())).toStrictEqual([]);
  });

  test("one limb after the other", () => {
    const entries = [
      told("wrap.on", LEFT),
      off(1),
      told("wrap.on", { limb: "right-upper-arm" }, 2),
    ];
    expect(openWraps(entries).map(({ limb }) => limb)).toStrictEqual(["right-upper-arm"]);
    expect(lastOff(entries)).toBe(entries[1]);
    expect(lastOff(entries, { arm: false })).toBeNull();
  });

  test("are asked for numbness once each", () => {
    const on = told("wrap.on", LEFT);
    const check = told("wrap.check", { numb: false }, 21 * SECOND);
    const again = told("wrap.on", LEFT, 60 * SECOND);
    expect(openWraps([on])[0]?.asked).toBe(false);
    expect(openWraps([on, check])[0]?.asked).toBe(true);
    expect(openWraps([on, check, again])[0]?.asked).toBe(false);
  });
});

describe("numbness", () => {
  const numb = (after: number) => told("wrap.check", { numb: true }, after * SECOND);
  const clear = (after: number) => told("wrap.check", { numb: false }, after * SECOND);
  const now = (...entries: Parameters<typeof numbness>[0]) =>
    numbness(entries, TODAY, QUESTIONS.numb);

  test("early and the first time: off, and once more where it clears", () => {
    const on = told("wrap.on", LEFT);
    const first = numb(25);
    expect(now(on, first)).toBe("clearing");
    expect(now(on, first, off(26 * SECOND), clear(60))).toBe("once");
  });

  test("that does not clear, or comes late, is the end for today", () => {
    expect(now(told("wrap.on", LEFT), numb(25), numb(90))).toBe("closed");
    expect(now(told("wrap.on", LEFT), numb(31))).toBe("closed");
  });

  test("that comes again is the end for today", () => {
    const first = [told("wrap.on", LEFT), numb(25), clear(60)];
    const again = [told("wrap.on", LEFT, 400 * SECOND), numb(420)];
    expect(now(...first, ...again)).toBe("closed");
    expect(now(...again)).toBe("clearing");
  });

  test("is over the next day", () => {
    const entries = [told("wrap.on", LEFT), numb(31)];
    expect(numbness(entries, "2026-02-03", QUESTIONS.numb)).toBe("none");
  });
});

describe("the questions after the work", () => {
  const due = (hours: number, ...answered: number[]) =>
    checkDue(
      [off(0), ...answered.map((h) => told("after.check", { hours: h, signs: [] }, h * HOUR))],
      QUESTIONS.after_hours,
      NOON + hours * HOUR,
    )?.hours ?? null;

  test("are due after 24, 48 and 72 hours", () => {
    expect([23, 24, 47, 48, 71, 72, 2_000].map((hours) => due(hours))).toStrictEqual([
      null,
      24,
      24,
      48,
      48,
      72,
      72,
    ]);
  });

  test("a later answer does for the earlier ones", () => {
    expect([due(30, 24), due(50, 24), due(50, 48), due(80, 48), due(80, 72)]).toStrictEqual([
      null,
      48,
      null,
      72,
      null,
    ]);
  });

  test("begin anew with the next work, and never come without any", () => {
    const entries = [
      off(0),
      told("after.check", { hours: 24, signs: [] }, 24 * HOUR),
      off(50 * HOUR),
    ];
    expect(checkDue(entries, QUESTIONS.after_hours, NOON + 60 * HOUR)).toBeNull();
    expect(checkDue(entries, QUESTIONS.after_hours, NOON + 75 * HOUR)?.hours).toBe(24);
    expect(checkDue([], QUESTIONS.after_hours, NOON)).toBeNull();
  });

  test("say what to do by the gravest sign, and the advice that goes with a sign", () => {
    expect(doNow([], 24, QUESTIONS)).toStrictEqual([QUESTIONS.do_now.none]);
    expect(doNow(["sore", "dark-urine"], 24, QUESTIONS)).toStrictEqual([
      QUESTIONS.do_now["see-today"],
      QUESTIONS.after_advice["dark-urine"],
    ]);
    expect(doNow(["one-limb", "breathless"], 48, QUESTIONS)[0]).toBe(QUESTIONS.do_now.emergency);
    expect(doNow(["sore"], 72, QUESTIONS)).toStrictEqual([QUESTIONS.do_now.none]);
  });
});
