// @vitest-environment node
import { describe, expect, test } from "vitest";

import { untilNextSecond } from "./clocks";
import { restState } from "./rest";

const REST = { from_s: 75, to_s: 90 };
const SET_AT = Date.UTC(2026, 1, 3, 18, 0);

function phaseAfter(seconds: number): string | undefined {
  return restState(REST, SET_AT, SET_AT + seconds * 1000)?.phase;
}

describe("the rest clock", () => {
  test("rests until the early end, is ready until the late one, then over", () => {
    expect([0, 74.9, 75, 89.9, 90, 600].map(phaseAfter)).toStrictEqual([
      "resting",
      "resting",
      "ready",
      "ready",
      "over",
      "over",
    ]);
  });

  test("goes by the time of day: right at once after half an hour in the pocket", () => {
    expect(phaseAfter(30 * 60)).toBe("long over");
  });

  test("counts whole seconds up, and down to the early end", () => {
    expect(restState(REST, SET_AT, SET_AT + 40_900)).toMatchObject({ elapsedS: 40, leftS: 35 });
    expect(restState(REST, SET_AT, SET_AT + 80_000)).toMatchObject({ elapsedS: 80, leftS: 0 });
  });

  test("shows nothing where the phone's clock was set back during the rest", () => {
    expect(restState(REST, SET_AT, SET_AT - 3_600_000)).toBeNull();
  });

  test("bears a start that lies a moment ahead", () => {
    expect(restState(REST, SET_AT, SET_AT - 400)).toMatchObject({ elapsedS: 0, phase: "resting" });
  });

  test("shows nothing where no rest is prescribed", () => {
    expect(restState(undefined, SET_AT, SET_AT)).toBeNull();
  });

  test("is drawn anew when its own seconds are full", () => {
    expect(untilNextSecond(SET_AT + 250, SET_AT + 1_300)).toBe(950);
    expect(untilNextSecond(SET_AT + 250, SET_AT)).toBe(250);
  });
});
