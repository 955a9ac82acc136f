import { afterEach, describe, expect, test } from "vitest";

import { oneExercise, openSetScreen, type Thumb } from "../../../../tests/fakes/set-screen";

let thumb: Thumb;

afterEach(() => thumb.close());

async function open(...what: Parameters<typeof oneExercise>): Promise<void> {
  thumb = await openSetScreen(oneExercise(...what));
}

describe("a one-sided set", () => {
  const RULE = { details: { first: "right", knee_down: "same" } } as const;
  const sides = () =>
    [...(thumb.session().record.sets.get("a-1")?.sides ?? [])].map(([side, { body }]) => [
      side,
      body,
    ]);

  test("takes one tap a side, with the same load for both", async () => {
    await open("one-sided", { reps: 6 }, RULE);
    expect(thumb.root.textContent).toContain("Right side, right knee down");
    await thumb.tap("Heavier");
    await thumb.tap("Done, right");
    expect(thumb.root.textContent).toContain("Left side now, left knee down");
    await thumb.tap("Done, left");
    expect(sides()).toStrictEqual([
      ["left", { load_kg: 85, reps: 6, rir: null, side: "left" }],
      ["right", { load_kg: 85, reps: 6, rir: null, side: "right" }],
    ]);
    expect(thumb.session().record.conflicts).toStrictEqual([]);
    expect(thumb.root.textContent).toContain("2 of 3");
  });

  test("rests only when both sides are done", async () => {
    await open("one-sided", { reps: 6 }, RULE);
    await thumb.tap("Done, right");
    expect(thumb.root.querySelector("[role=timer]")).toBeNull();
    expect(thumb.root.textContent).toContain("Right side recorded");
    await thumb.tap("Done, left");
    expect(thumb.root.querySelector("[role=timer]")).not.toBeNull();
  });

  test("is corrected on the side that was done last, with three taps", async () => {
    await open("one-sided", { reps: 6 }, RULE);
    await thumb.tap("Done, right");
    await thumb.reload();
    await thumb.tap("Done, left");
    thumb.taps = 0;
    await thumb.tap("Correct");
    await thumb.tap("Reps: less");
    await thumb.tap("Save, left");
    expect([sides().map(([, body]) => (body as { reps: number }).reps), thumb.taps]).toStrictEqual([
      [5, 6],
      3,
    ]);
  });

  test("can be taken back on one side alone", async () => {
    await open("one-sided", { reps: 6 }, RULE);
    await thumb.tap("Done, right");
    await thumb.tap("Done, left");
    await thumb.tap("Undo");
    expect(sides().map(([side]) => side)).toStrictEqual(["right"]);
    expect(thumb.root.textContent).toContain("Left side now");
  });

  test("can be skipped on the other side, or as a whole", async () => {
    await open("one-sided", { reps: 6 }, RULE);
    await thumb.tap("Done, right");
    await thumb.tap("Skip this set");
    await thumb.tap("Something hurts");
    expect(sides()).toMatchObject([
      ["left", { why: "something hurts", side: "left" }],
      ["right", {}],
    ]);
    await thumb.tap("Skip this set");
    await thumb.tap("No time");
    expect(thumb.bodyOf("a-2")).toStrictEqual({ why: "no time" });
    expect(thumb.root.textContent).toContain("3 of 3");
  });
});

test("exercises in rounds say which comes when", async () => {
  const one = oneExercise("straight", { reps: 5 }, { group: "A" });
  const two = oneExercise("straight", { reps: 8 }, { group: "A", key: "b", name: "Row" });
  const [first, second] = [one.exercises[0], two.exercises[0]];
  if (!first || !second) throw new Error("both have an exercise");
  const sets = second.sets.map((set) => ({ ...set, key: set.key.replace("a", "b") }));
  thumb = await openSetScreen({ ...one, exercises: [first, { ...second, sets }] });
  expect(thumb.root.textContent).toContain("A1 then A2, round 1 of 3: now A1");
  await thumb.tap("Done");
  expect(thumb.root.textContent).toContain("A1 then A2, round 1 of 3: now A2");
});
