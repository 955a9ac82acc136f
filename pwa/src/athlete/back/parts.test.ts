import { describe, expect, test } from "vitest";

import type { LoadSheet, SheetExercise } from "../../api/types";
import { draft } from "../../offline/entry";
import { fold, type SessionRecord } from "../../offline/fold";
import { partsOf, sheetOf } from "./parts";

const dumbbell = { kind: "dumbbell", name: "Dumbbell" } as const;

const squat: SheetExercise = {
  key: "a",
  exercise: "back-squat",
  name: "Back squat",
  method: "straight",
  implement: { kind: "straight-bar", name: "Steel bar" },
  sets: [
    { key: "a-1", number: 1, target: { reps: 5 } },
    { key: "a-2", number: 2, target: { reps: 5 } },
  ],
  alternatives: [
    {
      exercise: "goblet-squat",
      name: "Goblet squat",
      implement: dumbbell,
      loads: [{ kg: 24, position: 3178 }],
      sets: [0, 0],
    },
  ],
};

function sheet(revision: number, exercise: SheetExercise): LoadSheet {
  return { session: "day", revision, exercises: [exercise] } as unknown as LoadSheet;
}

const place = { session: "day", revision: 1 };

function done(id: string, set: string) {
  return draft(id, 0, "set.done", { load_kg: 60, reps: 5, rir: 2 }, { ...place, set });
}

function folded(...entries: Parameters<typeof fold>[0]): SessionRecord {
  const [record] = fold(entries);
  if (!record) throw new Error("nothing was folded");
  return record;
}

describe("looked back on", () => {
  test("a set before a swap stands under what it was done as, and one after it too", () => {
    const to = { exercise: "a", to: "goblet-squat" };
    const swap = draft("2", 0, "exercise.swapped", to, place);
    const parts = partsOf(sheet(1, squat), folded(done("1", "a-1"), swap, done("3", "a-2")));
    expect(parts.map(({ name, sets }) => [name, sets.length])).toStrictEqual([
      ["Back squat", 1],
      ["Goblet squat", 1],
    ]);
  });

  test("a session stands on the sheet of its own doing of the block", () => {
    const record = folded(done("1", "a-1"));
    const again = sheet(7, { ...squat, name: "Front squat" });
    expect(sheetOf(record, [again, sheet(1, squat)])?.revision).toBe(1);
    expect(sheetOf(record, [again])?.revision).toBe(7);
  });

  test("what the sheet does not know is told all the same", () => {
    const parts = partsOf(undefined, folded(done("1", "a-1")));
    expect(parts.map(({ name }) => name)).toStrictEqual(["Other sets"]);
  });
});
