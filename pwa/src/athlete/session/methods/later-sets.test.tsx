import { act } from "preact/test-utils";
import { afterEach, describe, expect, test } from "vitest";

import { newDraft } from "../../../../tests/fakes/phone";
import { oneExercise, openSetScreen, type Thumb } from "../../../../tests/fakes/set-screen";
import type { SheetExercise, SheetSet } from "../../../api/types";

let thumb: Thumb;

afterEach(() => thumb.close());

interface Way {
  readonly method: SheetExercise["method"];
  readonly target: SheetSet["target"];
  readonly more?: Partial<SheetExercise>;
  /** Taps that record a set as planned, and those that correct it. */
  readonly taps: readonly string[];
  readonly correct: readonly string[];
}

const WAYS: readonly Way[] = [
  { method: "straight", target: { reps: 5 }, taps: ["Done"], correct: ["Reps: less", "Save"] },
  { method: "unstable-bar", target: { reps: 8 }, taps: ["Done"], correct: ["Reps: less", "Save"] },
  { method: "warm-up", target: { reps: 15 }, taps: ["Done"], correct: ["Reps: less", "Save"] },
  { method: "tempo", target: { reps: 5 }, taps: ["Done"], correct: ["Reps: less", "Save"] },
  { method: "speed", target: { reps: 3 }, taps: ["Quality 4 of 5"], correct: ["Quality 3 of 5"] },
  { method: "hold", target: { seconds: 30 }, taps: ["Done"], correct: ["Seconds: less", "Save"] },
  {
    method: "timed",
    target: { distance_m: 30 },
    taps: ["Done"],
    correct: ["Metres: less", "Save"],
  },
  {
    method: "cluster",
    target: { blocks: [2, 2] },
    taps: ["Done, block 1", "Done, block 2"],
    correct: ["Block 2: less", "Save"],
  },
  {
    method: "one-sided",
    target: { reps: 6 },
    more: { details: { first: "left" } },
    taps: ["Done, left", "Done, right"],
    correct: ["Reps: less", "Save, right"],
  },
  {
    method: "maximum-test",
    target: { reps: 1 },
    more: { details: { reps: 1, attempts: 4 } },
    taps: ["Made"],
    correct: ["Missed"],
  },
];

async function tapAll(names: readonly string[]): Promise<void> {
  for (const name of names) await thumb.tap(name);
}

/** As from the list of all sets. */
async function correctFirst({ method }: Way): Promise<void> {
  await act(() => {
    const side = method === "one-sided" ? "right" : null;
    thumb.app.focus.value = { exercise: null, correcting: { exercise: "a", set: "a-1", side } };
  });
}

describe.each(WAYS)("a $method set", (way) => {
  const { method, target, more, taps, correct } = way;

  test("of an earlier place is corrected after a reload", async () => {
    thumb = await openSetScreen(oneExercise(method, target, more));
    await tapAll(taps);
    const before = thumb.bodyOf("a-1");
    await thumb.reload();
    await correctFirst(way);
    await tapAll(correct);
    expect(thumb.bodyOf("a-1")).not.toStrictEqual(before);
    expect(thumb.session().record.conflicts).toStrictEqual([]);
  });

  test("that the athlete added is done like the others, and one is skipped with its reason", async () => {
    thumb = await openSetScreen(oneExercise(method, target, more));
    const place = { revision: 1, session: thumb.session().sheet.session, set: "extra-1" };
    await thumb.phone.record(newDraft("set.added", { exercise: "a" }, place));
    await thumb.reload();
    for (const _ of [1, 2, 3]) await tapAll(["Skip this set", "Too tired"]);
    expect(thumb.bodyOf("a-3")).toStrictEqual({ why: "too tired" });
    expect(thumb.root.textContent).toContain("4 of 4");
    await tapAll(taps);
    expect(thumb.session().record.sets.get("extra-1")).toMatchObject({ addedTo: "a" });
    expect(thumb.root.textContent).toContain("That was the last set.");
  });
});
