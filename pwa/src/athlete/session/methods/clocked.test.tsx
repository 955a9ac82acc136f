import { afterEach, describe, expect, test } from "vitest";

import { oneExercise, openSetScreen, type Thumb } from "../../../../tests/fakes/set-screen";

let thumb: Thumb;

afterEach(() => thumb.close());

async function open(...what: Parameters<typeof oneExercise>): Promise<void> {
  thumb = await openSetScreen(oneExercise(...what));
}

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
