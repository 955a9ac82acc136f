// @vitest-environment node
import { describe, expect, test } from "vitest";

import type { SheetExercise } from "../../../api/types";
import { draft, type SetDone } from "../../../offline/entry";
import type { LastSet } from "../view";
import { stopCall, stopInWords, whyStopped } from "./stop-rule";

const PULL: SheetExercise = {
  key: "pull",
  exercise: "hex-bar-deadlift",
  name: "Hex bar deadlift",
  method: "speed",
  implement: { kind: "hex-bar", name: "Hex bar" },
  details: { stop_at_loss_percent: 10, stop_at_quality: 2 },
  sets: [1, 2, 3, 4, 5].map((number) => ({ key: `p-${number}`, number, target: { reps: 3 } })),
};

function after(sets: readonly Partial<SetDone>[], exercise = PULL): LastSet[] {
  return sets.map((body, index) => {
    const [set] = exercise.sets;
    if (!set) throw new Error("the exercise has sets");
    const done = { load_kg: 85, reps: 3, rir: null, ...body };
    const entry = draft(`id-${index}`, index, "set.done", done);
    return { exercise, set, side: null, entry, doneAt: index };
  });
}

const measured = (...sets: number[][]) => after(sets.map((velocities_m_s) => ({ velocities_m_s })));
const rated = (...qualities: number[]) => after(qualities.map((quality) => ({ quality })));

describe("a measured speed set", () => {
  test("12 % slower than the best says stop at a limit of 10 %", () => {
    expect(stopCall(PULL, measured([1, 1, 1], [0.88, 0.88, 0.88]))).toStrictEqual({
      by: "velocity",
      last: 0.88,
      best: 1,
      limitPercent: 10,
    });
  });

  test("exactly at the limit does not stop yet", () => {
    expect(stopCall(PULL, measured([0.7, 0.7, 0.7], [0.63, 0.63, 0.63]))).toBeNull();
    expect(stopCall(PULL, measured([0.7, 0.7, 0.7], [0.63, 0.63, 0.62]))).not.toBeNull();
  });

  test("is held against the best one and not against the one before", () => {
    const sets = measured([0.8, 0.8, 0.8], [1, 1, 1], [0.93, 0.93, 0.93], [0.86, 0.86, 0.86]);
    expect(stopCall(PULL, sets)).toMatchObject({ last: 0.86, best: 1 });
  });

  test("counts by its mean, whatever the number of its reps", () => {
    expect(stopCall(PULL, measured([0.9, 0.9, 0.9], [0.9, 0.9]))).toBeNull();
  });

  test("has the coach's own limit", () => {
    const strict = { ...PULL, details: { stop_at_loss_percent: 5, stop_at_quality: 2 } };
    expect(stopCall(strict, measured([1, 1], [0.94, 0.94]))).toMatchObject({ limitPercent: 5 });
    expect(stopCall(PULL, measured([1, 1], [0.94, 0.94]))).toBeNull();
  });

  test("that is the first has nothing to be held against", () => {
    expect(stopCall(PULL, measured([0.2]))).toBeNull();
  });
});

describe("a rated speed set", () => {
  test("of quality 2 says stop the second time", () => {
    expect(stopCall(PULL, rated(4, 2))).toBeNull();
    expect(stopCall(PULL, rated(4, 2, 3, 2))).toStrictEqual({ by: "quality", limit: 2 });
  });

  test("that was good again says nothing, whatever came before", () => {
    expect(stopCall(PULL, rated(2, 1, 4))).toBeNull();
  });

  test("is never turned into a velocity", () => {
    const mixed = [...measured([1, 1, 1]), ...rated(1)];
    expect(stopCall(PULL, mixed)).toBeNull();
  });
});

test("sets of another exercise, and a sheet without limits, say nothing", () => {
  const other = after([{ quality: 1 }, { quality: 1 }], { ...PULL, key: "other" });
  expect(stopCall(PULL, other)).toBeNull();
  const { details: _, ...silent } = PULL;
  expect(stopCall(silent, rated(1, 1))).toBeNull();
});

test("the words name both velocities and the limit, and the coach reads why", () => {
  const call = stopCall(PULL, measured([0.84, 0.84], [0.74, 0.74]));
  if (!call) throw new Error("it stops");
  expect(stopInWords(call)).toBe(
    "Your last set averaged 0.74 m/s, your best 0.84. The limit is 10 % slower.",
  );
  expect(whyStopped(call)).toBe("more than 10 % slower than the best set");
});
