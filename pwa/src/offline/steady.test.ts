// @vitest-environment node
import { beforeEach, describe, expect, test, vi } from "vitest";

import { createSteady, type Steady, NO_JUMPS } from "./steady";

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const SIX = Date.UTC(2026, 1, 3, 18, 0);

let phone = { now: SIX, ms: 0, away: false };
let steady: Steady;
const onJump = vi.fn();

beforeEach(() => {
  phone = { now: SIX, ms: 0, away: false };
  onJump.mockClear();
  steady = opened();
});

function opened(): Steady {
  const clock = { now: () => phone.now };
  const count = { ms: () => phone.ms, away: () => phone.away };
  const made = createSteady({ clock, count, onJump });
  made.times();
  return made;
}

function pass(ms: number): void {
  phone = { ...phone, now: phone.now + ms, ms: phone.ms + ms };
}

/** The clock is changed, or the phone sleeps and the browser's count stands still. */
function jump(ms: number): void {
  phone = { ...phone, now: phone.now + ms };
}

/** A page looks when it leaves the view and when it comes back. */
function turn(away: boolean): void {
  phone = { ...phone, away };
  steady.times();
}

function minutes(): number {
  return (steady.times().steady - SIX) / MINUTE;
}

describe("the steady clock", () => {
  test("is the time of day as long as nobody changes that", () => {
    pass(10 * MINUTE);
    expect(steady.times()).toStrictEqual({ now: phone.now, steady: phone.now, lostAt: null });
    expect(onJump).not.toHaveBeenCalled();
  });

  test.each([HOUR, -HOUR])("goes on where the phone's clock jumps by %i ms in view", (ms) => {
    pass(MINUTE);
    jump(ms);
    expect(minutes()).toBe(1);
    pass(MINUTE);
    expect(minutes()).toBe(2);
    expect(steady.jumps()).toStrictEqual({ byMs: ms, lostAt: null });
    expect(onJump).toHaveBeenCalledOnce();
  });

  test("counts ten minutes of sleep that the browser did not count", () => {
    turn(true);
    jump(10 * MINUTE);
    turn(false);
    expect(minutes()).toBe(10);
    expect(steady.jumps().byMs).toBe(0);
  });

  test("goes on by the browser's count where the clock was set back out of view", () => {
    turn(true);
    pass(10 * MINUTE);
    jump(-HOUR);
    turn(false);
    expect(minutes()).toBe(10);
    expect(steady.times().lostAt).toBe(SIX + 10 * MINUTE);
  });

  test("takes a clock that ran ahead out of view for sleep", () => {
    turn(true);
    pass(MINUTE);
    jump(HOUR);
    turn(false);
    expect(minutes()).toBe(61);
  });

  test("is right in a page that is opened after the jump, by what was kept", () => {
    jump(-HOUR);
    expect(minutes()).toBe(0);
    const kept = steady.jumps();
    pass(5 * MINUTE);
    steady = opened();
    steady.adopt(kept);
    expect(minutes()).toBe(5);
  });

  test("takes over what another page has noticed once, not twice", () => {
    jump(-HOUR);
    steady.adopt({ byMs: -HOUR, lostAt: null });
    expect(minutes()).toBe(0);
  });

  test("keeps a jump that it notices only as older notes are read", () => {
    jump(-HOUR);
    steady.adopt(NO_JUMPS);
    expect(minutes()).toBe(0);
    expect(steady.jumps().byMs).toBe(-HOUR);
  });

  test("is not moved by what a network corrects within a second", () => {
    jump(400);
    expect(minutes()).toBeCloseTo(400 / MINUTE);
    expect(onJump).not.toHaveBeenCalled();
  });
});
