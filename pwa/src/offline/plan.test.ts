// @vitest-environment node
import { describe, expect, test } from "vitest";

import { SHEET } from "../../tests/fakes/phone";
import type { LoadSheet, SheetExercise } from "../api/types";
import type { Answer } from "./fold";
import { exercisesOf, nextStep, openSides, openSteps, type Progress, stepsOf } from "./plan";

const NO_CHANGES = { added: new Map<string, string>(), swaps: new Map<string, string>() };

function exercise(key: string, sets: number, more: Partial<SheetExercise> = {}): SheetExercise {
  return {
    key,
    exercise: key,
    name: key,
    method: "straight",
    implement: { kind: "body", name: "Your own body" },
    sets: Array.from({ length: sets }, (_, index) => ({
      key: `${key}${index + 1}`,
      number: index + 1,
      target: { reps: 5 },
    })),
    ...more,
  };
}

function inShort(exercises: SheetExercise[]): string[] {
  return stepsOf(exercises).map((step) =>
    step.kind === "set" ? step.set : `${step.exercise} warm-up ${step.ramp + 1}`,
  );
}

function done(...keys: string[]): Progress["sets"] {
  return new Map(keys.map((key) => [key, { sides: new Map() }]));
}

const RAMP = [
  { reps: 8, load: 0, share: 0.4 },
  { reps: 3, load: 0, share: 0.7 },
];

describe("the order of a session", () => {
  test("is exercise by exercise, each warm-up before its sets", () => {
    expect(inShort([exercise("a", 2, { ramp: RAMP }), exercise("b", 1)])).toStrictEqual([
      "a warm-up 1",
      "a warm-up 2",
      "a1",
      "a2",
      "b1",
    ]);
  });

  test("goes in rounds where exercises share a group, until each has had its sets", () => {
    const group = { group: "A" };
    const rounds = [exercise("a", 3, group), exercise("b", 2, group), exercise("c", 1)];
    expect(inShort(rounds)).toStrictEqual(["a1", "b1", "a2", "b2", "a3", "c1"]);
  });
});

describe("what comes next", () => {
  const exercises = [exercise("a", 2, { ramp: RAMP }), exercise("b", 2)];

  test("is the first step that is neither done nor skipped", () => {
    expect(nextStep(exercises, { sets: done(), ramp: { a: 1 } })).toStrictEqual({
      kind: "ramp",
      exercise: "a",
      ramp: 1,
    });
    expect(nextStep(exercises, { sets: done("a1", "a2", "b1"), ramp: {} })).toMatchObject({
      set: "b2",
    });
  });

  test("leaves the warm-up behind once a work set was done", () => {
    expect(nextStep(exercises, { sets: done("a2"), ramp: {} })).toMatchObject({ set: "a1" });
  });

  test("is the exercise that the athlete chose, as long as it has open sets", () => {
    expect(nextStep(exercises, { sets: done(), ramp: {} }, "b")).toMatchObject({ set: "b1" });
    expect(nextStep(exercises, { sets: done("b1", "b2"), ramp: { a: 2 } }, "b")).toMatchObject({
      set: "a1",
    });
  });

  test("ends the round that was begun with the exercise that the athlete chose", () => {
    const group = { group: "B" };
    const paired = [exercise("a", 2), exercise("b", 2, group), exercise("c", 2, group)];
    const after = (...sets: string[]) => nextStep(paired, { sets: done(...sets), ramp: {} }, "b");
    expect(after()).toMatchObject({ set: "b1" });
    expect(after("b1")).toMatchObject({ set: "c1" });
    expect(after("b1", "c1")).toMatchObject({ set: "b2" });
    expect(after("b1", "c1", "b2", "c2")).toMatchObject({ set: "a1" });
  });

  test("is nothing when all is done", () => {
    expect(nextStep(exercises, { sets: done("a1", "a2", "b1", "b2"), ramp: {} })).toBeNull();
  });

  test("is never a set of a locked exercise", () => {
    const locked = [exercise("a", 2, { locked: "not yet" }), exercise("b", 1)];
    expect(openSteps(locked, { sets: done(), ramp: {} })).toMatchObject([{ set: "b1" }]);
  });
});

describe("a one-sided set", () => {
  const press = exercise("a", 1, { method: "one-sided", details: { first: "right" } });
  const told = (...sides: ("left" | "right")[]) => ({
    sides: new Map(sides.map((side) => [side, {} as Answer])),
  });

  test("is open on both sides, the coach's first side first", () => {
    expect(openSides(press, undefined)).toStrictEqual(["right", "left"]);
    expect(openSides({ ...press, details: { first: "left" } }, undefined)).toStrictEqual([
      "left",
      "right",
    ]);
  });

  test("stays open until both sides are done or skipped", () => {
    expect(openSides(press, told("right"))).toStrictEqual(["left"]);
    const half = { sets: new Map([["a1", told("right")]]), ramp: {} };
    expect(openSteps([press], half)).toMatchObject([{ set: "a1" }]);
    const whole = { sets: new Map([["a1", told("right", "left")]]), ramp: {} };
    expect(openSteps([press], whole)).toStrictEqual([]);
  });

  test("that was told at once is open on neither", () => {
    expect(openSteps([press], { sets: done("a1"), ramp: {} })).toStrictEqual([]);
  });
});

describe("what the athlete changes", () => {
  const other = {
    exercise: "goblet-squat",
    name: "Goblet squat",
    implement: { kind: "dumbbell", name: "Dumbbell" },
    loads: [{ kg: 24, position: 3178 }],
    sets: [0, null, 0],
  };
  const [squat] = SHEET.exercises;
  if (!squat) throw new Error("the sheet has a squat");
  const sheet: LoadSheet = { ...SHEET, exercises: [{ ...squat, alternatives: [other] }] };

  test("a swap keeps the sets with their keys and takes the loads made for it", () => {
    const swaps = new Map([["a", "goblet-squat"]]);
    const [swapped] = exercisesOf(sheet, { ...NO_CHANGES, swaps });
    expect(swapped).toMatchObject({ key: "a", name: "Goblet squat", loads: [{ kg: 24 }] });
    expect(swapped?.sets.map(({ key, load }) => [key, load])).toStrictEqual([
      ["a-1", 0],
      ["a-2", undefined],
      ["a-3", 0],
    ]);
    expect(swapped?.notches).toBeUndefined();
  });

  test("a swap to what the sheet does not know changes nothing", () => {
    const swaps = new Map([["a", "leg-press"]]);
    expect(exercisesOf(sheet, { ...NO_CHANGES, swaps })).toStrictEqual(sheet.exercises);
  });

  test("an added set is like the last one of the plan", () => {
    const added = new Map([["extra-1", "a"]]);
    const [more] = exercisesOf(SHEET, { ...NO_CHANGES, added });
    expect(more?.sets.at(-1)).toMatchObject({ key: "extra-1", number: 4, load: 0 });
  });
});
