import { afterEach, describe, expect, test } from "vitest";

import { oneExercise, openSetScreen, type Thumb } from "../../../../tests/fakes/set-screen";

let thumb: Thumb;

afterEach(() => thumb.close());

async function open(...what: Parameters<typeof oneExercise>): Promise<void> {
  thumb = await openSetScreen(oneExercise(...what));
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
