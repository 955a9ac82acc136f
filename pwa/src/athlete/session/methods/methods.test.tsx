import { afterEach, describe, expect, test } from "vitest";

import { SHEET } from "../../../../tests/fakes/phone";
import { openSetScreen, type Thumb } from "../../../../tests/fakes/set-screen";
import type { LoadSheet, SheetExercise, SheetSet } from "../../../api/types";

const LOADS = [
  { kg: 80, position: 4382 },
  { kg: 85, position: 4443 },
];

function sheet(
  method: SheetExercise["method"],
  target: SheetSet["target"],
  more: Partial<SheetExercise> = {},
): LoadSheet {
  const sets = [1, 2, 3].map((number) => ({ key: `a-${number}`, number, target, load: 0 }));
  const exercise: SheetExercise = {
    key: "a",
    exercise: "back-squat",
    name: "Back squat",
    method,
    implement: { kind: "straight-bar", name: "Steel bar" },
    loads: LOADS,
    sets,
    rest: { from_s: 60, to_s: 90 },
    ...more,
  };
  return { ...SHEET, exercises: [exercise] };
}

let thumb: Thumb;

afterEach(() => thumb.close());

async function open(...what: Parameters<typeof sheet>): Promise<void> {
  thumb = await openSetScreen(sheet(...what));
}

describe("a speed set", () => {
  const LIMITS = { details: { stop_at_loss_percent: 10, stop_at_quality: 2 } };

  test("is told with its quality by one tap", async () => {
    await open("speed", { reps: 3 }, LIMITS);
    await thumb.tap("Quality 4 of 5");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toStrictEqual([
      { load_kg: 80, reps: 3, rir: null, quality: 4 },
      1,
    ]);
  });

  test("with other repetitions takes two", async () => {
    await open("speed", { reps: 3 }, LIMITS);
    await thumb.tap("Reps: less");
    await thumb.tap("Quality 4 of 5");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ reps: 2, quality: 4 }, 2]);
  });

  test("is told with a velocity for each rep, in steps and without typing; the choice stays", async () => {
    await open("speed", { reps: 2 }, LIMITS);
    await thumb.tap("Velocity instead");
    await thumb.tap("Faster by 0.05");
    await thumb.tap("Faster by 0.01");
    await thumb.tap("Rep 2: not yet");
    await thumb.tap("Slower by 0.01");
    await thumb.tap("Done");
    expect(thumb.bodyOf("a-1")).toStrictEqual({
      load_kg: 80,
      reps: 2,
      rir: null,
      velocities_m_s: [0.66, 0.65],
    });
    await thumb.reload();
    expect(thumb.root.textContent).toContain("Quality instead");
  });

  test("slower than the limit says stop; ending skips the rest with that reason", async () => {
    await open("speed", { reps: 1 }, LIMITS);
    await thumb.tap("Velocity instead");
    await thumb.tap("Faster by 0.05");
    await thumb.tap("Done");
    await thumb.tap("Slower by 0.05");
    await thumb.tap("Slower by 0.05");
    await thumb.tap("Done");
    expect(thumb.root.textContent).toContain("Stop here.");
    expect(thumb.root.textContent).toContain("averaged 0.55 m/s, your best 0.65");
    await thumb.tap("End: skip 1 set");
    expect(thumb.bodyOf("a-3")).toStrictEqual({ why: "more than 10 % slower than the best set" });
    expect(thumb.root.textContent).toContain("That was the last set.");
  });

  test("that says stop leaves it to the athlete to go on", async () => {
    await open("speed", { reps: 3 }, LIMITS);
    await thumb.tap("Quality 2 of 5");
    await thumb.tap("Quality 1 of 5");
    expect(thumb.root.textContent).toContain("Quality 2 of 5 or less, twice.");
    await thumb.tap("Go on");
    await thumb.tap("Quality 4 of 5");
    expect(thumb.bodyOf("a-3")).toMatchObject({ quality: 4 });
  });

  test("is corrected with two taps", async () => {
    await open("speed", { reps: 3 }, LIMITS);
    await thumb.tap("Quality 4 of 5");
    thumb.taps = 0;
    await thumb.tap("Correct");
    await thumb.tap("Quality 3 of 5");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ quality: 3 }, 2]);
  });
});

describe("a hold", () => {
  const HALFWAY = { details: { position: 0.5, per_rep: false } };

  test("is recorded by the end of its clock: one tap, and rest counts from there", async () => {
    await open("hold", { seconds: 40 }, HALFWAY);
    expect(thumb.root.textContent).toContain("Held halfway through the lift");
    await thumb.tap("Start the hold");
    await thumb.wait(10_000);
    expect(thumb.root.querySelector("[role=timer]")?.textContent).toContain("30s left of 40 s");
    await thumb.wait(45_000);
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ load_kg: 80, seconds: 40 }, 1]);
    expect(thumb.app.alarm.ring).toHaveBeenCalledWith(3);
    expect(thumb.app.flash.value).toBe("Hold: done");
    expect(thumb.root.querySelector("[role=timer]")?.textContent).toContain("0:15");
  });

  test("goes on through a reload in the middle, to the second", async () => {
    await open("hold", { seconds: 40 }, HALFWAY);
    await thumb.tap("Heavier");
    await thumb.tap("Start the hold");
    await thumb.wait(12_300);
    await thumb.reload();
    expect(thumb.root.querySelector("[role=timer]")?.textContent).toContain("28s left of 40 s");
    await thumb.wait(28_000);
    expect(thumb.bodyOf("a-1")).toMatchObject({ load_kg: 85, seconds: 40 });
  });

  test("let go early is recorded with the seconds held", async () => {
    await open("hold", { seconds: 40 }, HALFWAY);
    await thumb.tap("Start the hold");
    await thumb.wait(23_700);
    await thumb.tap("Let go now");
    expect(thumb.bodyOf("a-1")).toMatchObject({ seconds: 23 });
  });

  test("that was forgotten for an hour records nothing by itself", async () => {
    await open("hold", { seconds: 40 }, HALFWAY);
    await thumb.tap("Start the hold");
    thumb.timers.pass(3_600_000);
    await thumb.reload();
    expect(thumb.bodyOf("a-1")).toBeUndefined();
    await thumb.tap("Done");
    expect(thumb.bodyOf("a-1")).toMatchObject({ seconds: 40 });
  });

  test("is corrected with three taps", async () => {
    await open("hold", { seconds: 40 }, HALFWAY);
    await thumb.tap("Done");
    thumb.taps = 0;
    await thumb.tap("Correct");
    await thumb.tap("Seconds: less");
    await thumb.tap("Save");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ seconds: 35 }, 3]);
  });

  test("per rep has a clock for each; the last one's end records the set", async () => {
    await open("hold", { reps: 2, seconds: 5 }, { details: { position: 1, per_rep: true } });
    await thumb.tap("Start rep 1 of 2: 5 s");
    await thumb.wait(5_000);
    expect(thumb.bodyOf("a-1")).toBeUndefined();
    await thumb.reload();
    await thumb.tap("Start rep 2 of 2: 5 s");
    await thumb.wait(5_000);
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ reps: 2, seconds: 5 }, 2]);
  });

  test("per rep can end with fewer; a rep let go early does not count", async () => {
    await open("hold", { reps: 3, seconds: 5 }, { details: { position: 1, per_rep: true } });
    await thumb.tap("Start rep 1 of 3");
    await thumb.wait(5_000);
    await thumb.tap("Start rep 2 of 3");
    await thumb.wait(2_000);
    await thumb.tap("Let go");
    await thumb.tap("End the set: 1 rep held");
    expect(thumb.bodyOf("a-1")).toMatchObject({ reps: 1, seconds: 5 });
  });
});

describe("a cluster", () => {
  const REST = { details: { block_rest_s: 20 } };
  const BLOCKS = { blocks: [2, 2, 2] };

  test("takes one tap a block, with a clock between, and a reload loses none", async () => {
    await open("cluster", BLOCKS, REST);
    await thumb.tap("Done, block 1 of 3: 2 reps");
    await thumb.wait(5_000);
    await thumb.reload();
    expect(thumb.root.querySelector("[role=timer]")?.textContent).toContain("15");
    await thumb.tap("Done, block 2 of 3: 2 reps");
    await thumb.wait(20_000);
    expect(thumb.app.flash.value).toBe("Next block");
    await thumb.tap("Done, block 3 of 3: 2 reps");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toStrictEqual([
      { load_kg: 80, reps: 6, rir: null, blocks: [2, 2, 2] },
      3,
    ]);
  });

  test("says how many reps of which block", async () => {
    await open("cluster", BLOCKS, REST);
    await thumb.tap("Done, block 1");
    await thumb.tap("Block 2 of 3: less");
    await thumb.tap("Done, block 2 of 3: 1 rep");
    await thumb.tap("End the set here: 2 + 1");
    expect(thumb.bodyOf("a-1")).toMatchObject({ reps: 3, blocks: [2, 1] });
  });

  test("is corrected block by block with three taps", async () => {
    await open("cluster", BLOCKS, REST);
    for (const block of [1, 2, 3]) await thumb.tap(`Done, block ${block}`);
    thumb.taps = 0;
    await thumb.tap("Correct");
    await thumb.tap("Block 3: less");
    await thumb.tap("Save");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ reps: 5, blocks: [2, 2, 1] }, 3]);
  });
});

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

describe("timed work", () => {
  test("over a distance is timed by a stopwatch that a reload does not stop", async () => {
    await open("timed", { distance_m: 30 });
    await thumb.tap("Start the stopwatch");
    await thumb.wait(3_000);
    await thumb.reload();
    await thumb.wait(2_400);
    await thumb.tap("Stop: 30 m");
    expect(thumb.bodyOf("a-1")).toMatchObject({ load_kg: 80, distance_m: 30, seconds: 5.4 });
  });

  test("is recorded as planned without a clock by one tap", async () => {
    await open("timed", { distance_m: 30 });
    await thumb.tap("Done");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ distance_m: 30 }, 1]);
  });

  test("for a time counts down and records itself", async () => {
    await open("timed", { seconds: 60 });
    await thumb.tap("Start the clock: 60 s");
    await thumb.wait(60_000);
    expect(thumb.bodyOf("a-1")).toMatchObject({ seconds: 60 });
  });

  test("says full recovery where the coach gives it", async () => {
    await open("timed", { distance_m: 30 }, { rest: { from_s: 420, to_s: 600 } });
    expect(thumb.root.textContent).toContain("Full recovery after it: 7:00 to 10:00");
  });
});

describe("a tempo set", () => {
  const TEMPO = { details: { lowering_s: 3, pause_low_s: 1, lifting_s: 1, pause_high_s: 0 } };

  test("says its four figures in words and takes one tap", async () => {
    await open("tempo", { reps: 5 }, TEMPO);
    expect(thumb.root.textContent).toContain("3 s down, pause 1 s, 1 s up, no pause");
    await thumb.tap("Done");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toMatchObject([{ reps: 5 }, 1]);
  });

  test("has a beat that is silent until it is asked for", async () => {
    await open("tempo", { reps: 5 }, TEMPO);
    await thumb.wait(3_000);
    expect(thumb.app.alarm.tick).not.toHaveBeenCalled();
    await thumb.tap("Beat the tempo");
    await thumb.wait(3_000);
    expect(thumb.app.alarm.tick).toHaveBeenLastCalledWith(true);
    expect(thumb.root.textContent).toContain("Pause 1");
    await thumb.tap("tap to stop the beat");
    await thumb.tap("Done");
    expect(thumb.bodyOf("a-1")).toMatchObject({ reps: 5 });
  });
});

describe("a maximum test", () => {
  const RULE = { details: { reps: 1, attempts: 3 } };
  const tested = () =>
    thumb
      .session()
      .entries.filter(({ entry }) => entry.kind === "max.tested")
      .map(({ entry }) => (entry.body as { kg: number }).kg);

  test("tells attempts made and missed; the best one becomes the tested maximum", async () => {
    await open("maximum-test", { reps: 1 }, RULE);
    await thumb.tap("Made: 80 kg");
    await thumb.tap("Heavier");
    await thumb.tap("Made: 85 kg");
    expect(tested()).toStrictEqual([]);
    await thumb.tap("Missed");
    expect(thumb.bodyOf("a-3")).toMatchObject({ load_kg: 80, reps: 0 });
    expect(tested()).toStrictEqual([85]);
    const [entry] = thumb
      .session()
      .entries.flatMap((each) => (each.entry.kind === "max.tested" ? [each.entry] : []));
    expect(entry?.body).toStrictEqual({ lift: "back-squat", kg: 85, conditions: "Steel bar" });
  });

  test("can end before its attempts are used up", async () => {
    await open("maximum-test", { reps: 1 }, RULE);
    await thumb.tap("Made: 80 kg");
    await thumb.tap("End the test: 80 kg is my best");
    expect(tested()).toStrictEqual([80]);
    expect(thumb.root.textContent).toContain("That was the last set.");
  });

  test("tells its maximum anew when an attempt is corrected, and takes it back with the attempt", async () => {
    await open("maximum-test", { reps: 1 }, RULE);
    await thumb.tap("Made: 80 kg");
    await thumb.tap("End the test");
    await thumb.reload();
    await thumb.tap("Undo");
    await thumb.tap("Missed");
    expect(thumb.session().record.sets.size).toBe(3);
    expect(tested()).toStrictEqual([80]);
  });

  test("of more repetitions is told by its reps and reserve, and says no maximum itself", async () => {
    await open("maximum-test", { reps: 5 }, { details: { reps: 5, attempts: 3 } });
    await thumb.tap("Reps: more");
    await thumb.tap("Done");
    expect(thumb.bodyOf("a-1")).toMatchObject({ reps: 6 });
    expect(tested()).toStrictEqual([]);
  });
});

test("exercises in rounds say which comes when", async () => {
  const one = sheet("straight", { reps: 5 }, { group: "A" });
  const two = sheet("straight", { reps: 8 }, { group: "A", key: "b", name: "Row" });
  const [first, second] = [one.exercises[0], two.exercises[0]];
  if (!first || !second) throw new Error("both have an exercise");
  const sets = second.sets.map((set) => ({ ...set, key: set.key.replace("a", "b") }));
  thumb = await openSetScreen({ ...one, exercises: [first, { ...second, sets }] });
  expect(thumb.root.textContent).toContain("A1 then A2, round 1 of 3: now A1");
  await thumb.tap("Done");
  expect(thumb.root.textContent).toContain("A1 then A2, round 1 of 3: now A2");
});
