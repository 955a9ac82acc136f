import { describe, expect, it } from "vitest";

import type { Block } from "../../api/types";
import { addExercise, moveExercise, putExercise, removeExercise } from "./exercises";
import { isHeldEachRep, METHOD_NAMES, withMethod } from "./methods";
import { sessionAt } from "./places";
import { dice, exercise, set, twoWeeks } from "./samples";

const MONDAY = { week: 0, session: 0 };
const SQUAT = { key: "back-squat", implement: "straight-bar", one_sided: false } as const;

function exercisesOf(block: Block) {
  return sessionAt(block, MONDAY)?.exercises ?? [];
}

function setKeys(block: Block): string[] {
  return exercisesOf(block).flatMap((each) => each.sets.map((one) => one.key));
}

describe("an exercise that is added", () => {
  it("stands last and asks for sets that need no maximum yet", () => {
    const added = exercisesOf(addExercise(twoWeeks(), MONDAY, SQUAT, dice())).at(-1);
    expect(added).toMatchObject({ exercise: "back-squat", method: "straight" });
    expect(added?.sets.map((one) => one.load)).toEqual(
      ["a", "b", "c"].map(() => ({ basis: "rir", rir: 3 })),
    );
  });

  it("is done with the own body where nothing is lifted but that", () => {
    const picked = { key: "push-up", implement: "body", one_sided: false } as const;
    const added = exercisesOf(addExercise(twoWeeks(), MONDAY, picked, dice())).at(-1);
    expect(added?.sets[0]?.load).toEqual({ basis: "body" });
  });

  it("is done one side at a time where it has a side", () => {
    const picked = { key: "dumbbell-row", implement: "dumbbell", one_sided: true } as const;
    const added = exercisesOf(addExercise(twoWeeks(), MONDAY, picked, dice())).at(-1);
    expect(added).toMatchObject({ method: "one-sided", details: { first: "left" } });
  });
});

describe("keys of sets", () => {
  it("are unique within their session, however often an exercise is pasted", () => {
    let block = twoWeeks();
    const random = dice();
    for (let times = 0; times < 20; times += 1) {
      block = putExercise(block, MONDAY, exercise("pull", [set("s1", 3, 80)]), 0, random);
    }
    expect(new Set(setKeys(block)).size).toBe(setKeys(block).length);
  });

  it("stay with their line when exercises change places", () => {
    const block = moveExercise(twoWeeks(), { ...MONDAY, exercise: 1 }, 0);
    expect(setKeys(block)).toEqual(["s4", "s1", "s2", "s3"]);
  });

  it("are gone with their exercise, and the others keep theirs", () => {
    expect(setKeys(removeExercise(twoWeeks(), { ...MONDAY, exercise: 0 }))).toEqual(["s4"]);
  });
});

describe("another method", () => {
  const plan = exercise("pull", [set("s1", 3, 80)]);

  it("brings the details that it cannot do without", () => {
    expect(withMethod(plan, "tempo").details).toMatchObject({ lowering_s: 3 });
    expect(withMethod(plan, "straight")).toBe(plan);
  });

  it("drops the details of the method before", () => {
    expect(withMethod(withMethod(plan, "speed"), "straight")).not.toHaveProperty("details");
  });

  it("makes each set say what the method needs, and keeps keys and loads", () => {
    const needs = { hold: "seconds", timed: "seconds", cluster: "blocks" } as const;
    for (const [method, field] of Object.entries(needs)) {
      const [one] = withMethod(plan, method as keyof typeof needs).sets;
      expect(one?.[field]).toBeTruthy();
      expect(one).toMatchObject({ key: "s1", load: plan.sets[0]?.load });
    }
  });

  it("leaves no repetitions in a hold, unless its seconds count for each of them", () => {
    const held = withMethod(plan, "hold");
    expect(held.sets[0]).not.toHaveProperty("reps");
    expect(isHeldEachRep(held)).toBe(false);
    expect(isHeldEachRep({ ...held, details: { position: 0.5, per_rep: true } })).toBe(true);
  });

  it("has a name for people, whichever it is", () => {
    expect(Object.values(METHOD_NAMES).every(Boolean)).toBe(true);
  });

  it("finds its way back: sets of a hold get repetitions again", () => {
    const back = withMethod(withMethod(plan, "cluster"), "straight");
    expect(back.sets[0]).toEqual({ ...plan.sets[0], reps: 5 });
  });
});
