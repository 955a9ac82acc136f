import { afterEach, describe, expect, test } from "vitest";

import { oneExercise, openSetScreen, type Thumb } from "../../../../tests/fakes/set-screen";

let thumb: Thumb;

afterEach(() => thumb.close());

async function open(...what: Parameters<typeof oneExercise>): Promise<void> {
  thumb = await openSetScreen(oneExercise(...what));
}

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
