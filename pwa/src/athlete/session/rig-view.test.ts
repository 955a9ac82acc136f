// @vitest-environment node
import { describe, expect, test } from "vitest";

import { IN_SHEET, newDraft, SHEET, START } from "../../../tests/fakes/phone";
import type { LoadSheet, SheetExercise } from "../../api/types";
import { fold } from "../../offline/fold";
import { curveFor, heaviestKg, heldAt, isFresh } from "./rig-view";
import { toStrip } from "./strip";
import { type SessionView, viewSession } from "./view";

const LIGHT: SheetExercise = {
  key: "light",
  exercise: "oscillating-bar-bench-press",
  name: "Bench press on the oscillating bar",
  method: "unstable-bar",
  implement: { kind: "oscillating-bar", name: "Ash bar", key: "ash", mass_kg: 8, sides: 2 },
  loads: [
    { kg: 28, position: 3332, side: [10] },
    { kg: 38, position: 3638, side: [10, 5] },
  ],
  sets: [
    { key: "l-1", number: 1, target: { reps: 10 }, load: 0 },
    { key: "l-2", number: 2, target: { reps: 10 }, load: 1 },
  ],
  stripping: { moves: [], margin: 1.67 },
};

const PULL: SheetExercise = {
  key: "pull",
  exercise: "pulldown",
  name: "Lat pulldown",
  method: "hold",
  implement: { kind: "stack", name: "Cable tower", key: "tower" },
  details: { position: 0.5 },
  loads: [
    { kg: 30, position: 3401, pin_kg: 30 },
    { kg: 35, position: 3555, pin_kg: 35 },
  ],
  ramp: [{ reps: 5, load: 0, share: 0.5 }],
  sets: [
    {
      key: "p-1",
      number: 1,
      target: { seconds: 20 },
      load: 0,
      curve: { start_kg: 30, mean_kg: 31, end_kg: 34, doubt_kg: 0.2, points_kg: [30, 30, 34] },
    },
  ],
};

const [pullSet] = PULL.sets;
if (!pullSet) throw new Error("the pulldown has a set");

/** The session after those sets were done in that order, and so many warm-ups of the pulldown. */
function after(sets: readonly string[], ramp = 0, exercises = [LIGHT, PULL]): SessionView {
  const sheet: LoadSheet = { ...SHEET, exercises };
  const body = { load_kg: 28, reps: 10, rir: null };
  const drafts = [
    newDraft("session.started", {}, IN_SHEET),
    ...sets.map((set) => newDraft("set.done", body, { ...IN_SHEET, set })),
  ];
  const [record] = fold(drafts);
  if (!record) throw new Error("the session was started");
  const entries = drafts.map((entry) => ({ entry, position: null }));
  const times = { startedAt: START, steadyStart: START };
  const session = { sheet, record, entries, ...times, running: {}, ramp: { pull: ramp } };
  return viewSession(session, null);
}

describe("the force curve of a set", () => {
  test("is the one that was sent where the load is the planned one", () => {
    expect(curveFor(PULL, pullSet, { kg: 30, position: 0 })).toBe(pullSet.curve);
  });

  test("moves as a whole with the load: what hangs still adds the same all the way", () => {
    expect(curveFor(PULL, pullSet, { kg: 35, position: 0 })).toStrictEqual({
      start_kg: 35,
      mean_kg: 36,
      end_kg: 39,
      doubt_kg: 0.2,
      points_kg: [35, 35, 39],
    });
  });

  test("of a landmine is not guessed for another load", () => {
    const landmine = { ...PULL, implement: { kind: "landmine", name: "Landmine", sides: 1 } };
    expect(curveFor(landmine, pullSet, { kg: 35, position: 0 })).toBeNull();
  });
});

test("a hold has its place in the lift, and nothing else has", () => {
  expect([heldAt(PULL), heldAt(LIGHT)]).toStrictEqual([0.5, null]);
});

test("the order of loading is for the heaviest set", () => {
  expect(heaviestKg(LIGHT)).toBe(38);
});

test("an exercise begins with its warm-up, or with its first set where there is none", () => {
  expect(isFresh(after([]), LIGHT)).toBe(true);
  expect(isFresh(after(["l-1"]), LIGHT)).toBe(false);
  expect(isFresh(after(["l-1", "l-2"], 1), PULL)).toBe(false);
});

describe("a light bar is stripped in its order", () => {
  test("after its last set, and not between its sets", () => {
    expect(toStrip(after(["l-1"]), LIGHT)).toBeNull();
    expect(toStrip(after(["l-1", "l-2"]), PULL)?.key).toBe("light");
  });

  test("also when the session ends with it", () => {
    expect(toStrip(after(["p-1", "l-1", "l-2"], 1), null)?.key).toBe("light");
  });

  test("and is gone from the screen once the next exercise has begun", () => {
    expect(toStrip(after(["l-1", "l-2"], 1), PULL)).toBeNull();
    expect(toStrip(after(["l-1", "l-2", "p-1"]), null)).toBeNull();
  });

  test("but stays loaded where the next exercise uses it too", () => {
    const again = { ...LIGHT, key: "again", sets: [{ ...pullSet, key: "x-1" }] };
    expect(toStrip(after(["l-1", "l-2"], 0, [LIGHT, again]), again)).toBeNull();
  });
});
