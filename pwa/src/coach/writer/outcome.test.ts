import { describe, expect, it } from "vitest";

import type { SheetExercise, SheetSet } from "../../api/types";
import { madeOf, outcomesOf, rampInWords } from "./outcome";

const BAR = { kind: "straight-bar", name: "Bar", mass_kg: 20, sides: 2 };

function sheetSet(number: number, part: Partial<SheetSet>): SheetSet {
  return { key: `s${number}`, number, target: { reps: 3 }, ...part };
}

function sheet(sets: SheetSet[]): SheetExercise {
  return {
    key: "pull",
    exercise: "deadlift",
    name: "Deadlift",
    method: "straight",
    implement: BAR,
    loads: [
      { kg: 60, position: 4094, side: [20] },
      { kg: 87.5, position: 4472, side: [25, 5, 2.5, 1.25] },
    ],
    ramp: [{ reps: 5, load: 0, share: 0.6 }],
    sets,
  };
}

describe("what a line becomes", () => {
  it("is told once for sets that come out the same", () => {
    const load = { load: 1, wish_kg: 87.1, off_kg: 0.4, why: "80 % of 108.9 kg" };
    const [outcome, ...more] = outcomesOf(
      sheet([sheetSet(1, load), sheetSet(2, load), sheetSet(3, load)]),
      ["s1", "s2", "s3"],
    );
    expect(more).toEqual([]);
    expect(outcome).toMatchObject({
      sets: "1–3",
      load: "87.5 kg",
      made: "25 + 5 + 2.5 + 1.25 a side",
      off: "+0.4 to the wish of 87.1 kg",
      why: "80 % of 108.9 kg",
    });
  });

  it("is told set by set where they come out differently", () => {
    const sets = [sheetSet(1, { load: 0 }), sheetSet(2, { load: 1 })];
    expect(outcomesOf(sheet(sets), ["s1", "s2"]).map((each) => each.load)).toEqual([
      "60 kg",
      "87.5 kg",
    ]);
  });

  it("has no load where the athlete has to find it", () => {
    const [outcome] = outcomesOf(sheet([sheetSet(1, { why: "no maximum known" })]), ["s1"]);
    expect(outcome).toMatchObject({ load: "", made: "", off: "", why: "no maximum known" });
  });

  it("has the force curve where bands make the lift's beginning and end differ", () => {
    const curve = { start_kg: 60, mean_kg: 72.44, end_kg: 90, doubt_kg: 1.23 };
    const [outcome] = outcomesOf(sheet([sheetSet(1, { load: 0, curve })]), ["s1"]);
    expect(outcome?.curve).toEqual(curve);
  });

  it("has no curve where the resistance is the same all the way", () => {
    const curve = { start_kg: 60, mean_kg: 60, end_kg: 60 };
    const [outcome] = outcomesOf(sheet([sheetSet(1, { load: 0, curve })]), ["s1"]);
    expect(outcome?.curve).toBeNull();
  });

  it("begins with the ramp that the server worked out", () => {
    expect(rampInWords(sheet([]))).toBe("5 × 60 kg");
  });
});

describe("what hangs where", () => {
  it.each([
    [{ kg: 20, position: 0 }, BAR, "bare"],
    [
      { kg: 30, position: 0, side: [10] },
      { ...BAR, kind: "landmine", sides: 1 },
      "10 on the sleeve",
    ],
    [
      { kg: 47.5, position: 0, pin_kg: 45, add_ons_kg: [2.5] },
      { kind: "stack", name: "Tower" },
      "pin 45 + 2.5",
    ],
    [
      { kg: 45, position: 0, piece_kg: 22.5 },
      { kind: "dumbbells", name: "Pair" },
      "22.5 kg in each hand",
    ],
    [{ kg: 25, position: 0, piece_kg: 25 }, { kind: "dumbbell", name: "One" }, "25 kg in one hand"],
    [{ kg: 70, position: 0 }, { kind: "body", name: "Own body" }, ""],
  ])("is said for each implement", (load, implement, words) => {
    expect(madeOf(load, implement)).toBe(words);
  });
});
