// @vitest-environment node
import { describe, expect, test } from "vitest";

import { countdown, elapsedMs, LONGEST_MS } from "./clocks";

const START = Date.UTC(2026, 1, 3, 18, 0);

function after(seconds: number) {
  return countdown(40, START, START + seconds * 1000);
}

describe("a clock that counts down", () => {
  test("says what is left in whole seconds, the last one until it is full", () => {
    expect([0, 0.2, 39.1, 40].map((seconds) => after(seconds)?.leftS)).toStrictEqual([
      40, 40, 1, 0,
    ]);
  });

  test("counts only whole seconds as held, and never more than were asked for", () => {
    expect([0.9, 12.7, 55].map((seconds) => after(seconds)?.elapsedS)).toStrictEqual([0, 12, 40]);
  });

  test("is over at its end, and right at once after ten minutes in the pocket", () => {
    expect([39.9, 40, 600].map((seconds) => after(seconds)?.phase)).toStrictEqual([
      "running",
      "over",
      "over",
    ]);
  });

  test("was forgotten where nobody looked for half an hour after its end", () => {
    expect(countdown(40, START, START + 40_000 + LONGEST_MS)?.phase).toBe("forgotten");
  });

  test("shows nothing before its start, nor where the phone's clock was set back", () => {
    expect(countdown(40, null, START)).toBeNull();
    expect(countdown(40, START, START - 3_600_000)).toBeNull();
    expect(elapsedMs(START, START - 400)).toBe(0);
  });
});
