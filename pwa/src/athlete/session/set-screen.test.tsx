import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";

import { newDraft, SHEET } from "../../../tests/fakes/phone";
import { openSetScreen, type Thumb } from "../../../tests/fakes/set-screen";
import type { LoadSheet } from "../../api/types";

const [squat] = SHEET.exercises;
if (!squat) throw new Error("the sheet has a squat");

const BAR: LoadSheet = {
  ...SHEET,
  exercises: [
    {
      ...squat,
      implement: { kind: "straight-bar", name: "Steel bar", key: "bar", mass_kg: 20, sides: 2 },
      loads: [
        { kg: 80, position: 4382, side: [20, 10] },
        { kg: 85, position: 4443, side: [20, 10, 2.5] },
      ],
      rest: { from_s: 120, to_s: 180 },
    },
  ],
};

let thumb: Thumb;

beforeEach(async () => {
  thumb = await openSetScreen(BAR);
});

afterEach(() => thumb.close());

describe("the Set screen", () => {
  test("records a set as planned with one tap", async () => {
    await thumb.tap("Done");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toStrictEqual([{ load_kg: 80, reps: 5, rir: 2 }, 1]);
  });

  test("records other repetitions with two", async () => {
    await thumb.tap("Reps: less");
    await thumb.tap("Done");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toStrictEqual([{ load_kg: 80, reps: 4, rir: 2 }, 2]);
  });

  test("records another load with two", async () => {
    await thumb.tap("Heavier");
    await thumb.tap("Done");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toStrictEqual([{ load_kg: 85, reps: 5, rir: 2 }, 2]);
  });

  test("corrects the last set with three, and the correction replaces it", async () => {
    await thumb.tap("Done");
    const first = thumb.session().record.answers.get("a-1");
    thumb.taps = 0;
    await thumb.tap("Correct");
    await thumb.tap("In reserve: more");
    await thumb.tap("Save");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toStrictEqual([{ load_kg: 80, reps: 5, rir: 3 }, 3]);
    const entry = thumb.session().record.sets.get("a-1");
    expect(entry).toMatchObject({ conflict: false, entry: { replaces: first } });
  });

  test("takes the last set back with one tap; then it is open and can be done anew", async () => {
    await thumb.tap("Done");
    await thumb.tap("Undo");
    expect(thumb.bodyOf("a-1")).toBeUndefined();
    await thumb.tap("Done");
    expect(thumb.session().record.sets.get("a-1")).toMatchObject({
      conflict: false,
    });
  });

  test("skips a set with its reason and without typing", async () => {
    await thumb.tap("Skip this set");
    await thumb.tap("Kit broken");
    expect([thumb.bodyOf("a-1"), thumb.taps]).toStrictEqual([{ why: "kit broken" }, 2]);
  });

  test("does not take a double tap for two sets", async () => {
    const button = await vi.waitFor(
      () => {
        const found = thumb.root.querySelector<HTMLButtonElement>("button.record:not(:disabled)");
        if (!found) throw new Error("the button is not armed yet");
        return found;
      },
      { timeout: 10_000 },
    );
    await act(async () => {
      button.click();
      button.click();
      await thumb.phone.record(newDraft("message", { text: "after it" }));
    });
    thumb.root.querySelector<HTMLButtonElement>("button.record")?.click();
    expect(thumb.session().record.sets.size).toBe(1);
  });

  test("says what to hang for the first set, and that nothing changes for the second", async () => {
    expect(thumb.root.textContent).toContain("Put on 20, 10, each side.");
    await thumb.tap("Done");
    expect(thumb.root.textContent).toContain("Same plates as before.");
  });

  test("starts the rest clock by recording", async () => {
    expect(thumb.root.querySelector("[role=timer]")).toBeNull();
    await thumb.tap("Done");
    expect(thumb.root.querySelector("[role=timer]")?.textContent).toContain("rest 2:00 to 3:00");
  });

  test("says over the whole screen when the rest may end, also after a locked screen", async () => {
    await thumb.tap("Done");
    await thumb.wait(120_000);
    expect(thumb.app.flash.value).toBe("Go when ready");
    expect(thumb.app.alarm.ring).toHaveBeenCalledExactlyOnceWith(2);
    await thumb.wait(60_000);
    expect(thumb.app.flash.value).toBe("Go now");
  });

  test("ends with the way to finish", async () => {
    for (let set = 1; set <= 3; set += 1) await thumb.tap("Done");
    expect(thumb.root.textContent).toContain("That was the last set.");
  });
});
