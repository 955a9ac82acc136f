import { describe, expect, test } from "vitest";

import type { SheetExercise } from "../api/types";
import type { Bodies, Of } from "./entry";
import { draft } from "./entry";
import { fold, type SessionRecord } from "./fold";
import { asDone } from "./plan";
import { askedInVain, failed, wasSwapped, without } from "./swaps";

const BAND = { key: "thin-left", kind: "bands", name: "thin, L", lasting: true } as const;
const BAR = { key: "steel", kind: "implement", name: "Steel bar" } as const;

const plain = {
  exercise: "goblet-squat",
  name: "Goblet squat",
  implement: { kind: "dumbbell", name: "Dumbbell" },
  loads: [{ kg: 24, position: 3178 }],
  sets: [0],
};

const squat: SheetExercise = {
  key: "a",
  exercise: "back-squat",
  name: "Back squat",
  method: "straight",
  implement: { kind: "straight-bar", name: "Steel bar" },
  sets: [{ key: "a-1", number: 1, target: { reps: 5 } }],
  uses: [BAR, BAND],
  alternatives: [plain, { ...plain, exercise: "front-squat", name: "Front squat", uses: [BAR] }],
};
const press: SheetExercise = { ...squat, key: "b", exercise: "bench-press", name: "Bench press" };
const SHEET = { session: "day", exercises: [squat, press] };

function swap(id: string, body: Bodies["exercise.swapped"]): Of<"exercise.swapped"> {
  return draft(id, 0, "exercise.swapped", body, { session: "day", revision: 1 });
}

function set(id: string) {
  const done = { load_kg: 60, reps: 5, rir: 2 };
  return draft(id, 0, "set.done", done, { session: "day", revision: 1, set: "a-1" });
}

function folded(...entries: Parameters<typeof fold>[0]): SessionRecord {
  const [record] = fold(entries);
  if (!record) throw new Error("nothing was folded");
  return record;
}

describe("a band that broke", () => {
  const broke = swap("2", { exercise: "a", to: "goblet-squat", missing: "thin-left", why: "" });

  test("is asked for in vain by what comes later, until the athlete has decided on that", () => {
    const record = folded(broke);
    const failures = failed(SHEET.exercises, record);
    expect(askedInVain(press, failures, record)?.key).toBe("thin-left");
    const decided = folded(broke, swap("3", { exercise: "b", to: "bench-press" }));
    expect(askedInVain(press, failures, decided)).toBeNull();
  });

  test("is fine again once the swap was taken back", () => {
    const record = folded(broke, swap("3", { exercise: "a", to: "back-squat" }));
    expect(failed(SHEET.exercises, record).size).toBe(0);
  });

  test("stays broken when a bar is taken after it", () => {
    const taken = { exercise: "a", to: "front-squat", missing: "steel", why: "" };
    const record = folded(broke, swap("3", taken));
    expect([...failed(SHEET.exercises, record).keys()]).toStrictEqual(["thin-left"]);
  });

  test("leaves out what needs it, in the server's order", () => {
    const names = without(squat.alternatives ?? [], new Set(["steel"])).map(({ name }) => name);
    expect(names).toStrictEqual(["Goblet squat"]);
  });
});

test("a bar that is taken may be free again for the next exercise", () => {
  const record = folded(
    swap("2", { exercise: "a", to: "goblet-squat", missing: "steel", why: "" }),
  );
  expect(failed(SHEET.exercises, record).size).toBe(0);
});

describe("a set that was done before the swap", () => {
  const record = folded(set("1"), swap("2", { exercise: "a", to: "goblet-squat" }));

  test("stays what it was done as", () => {
    const told = record.sets.get("a-1");
    expect(wasSwapped(record, squat, told?.first ?? "")).toBe(false);
    expect(asDone(SHEET, record, "a", told?.first ?? "")?.name).toBe("Back squat");
  });

  test("and one after it is the other exercise", () => {
    const after = folded(swap("2", { exercise: "a", to: "goblet-squat" }), set("3"));
    expect(wasSwapped(after, squat, "3")).toBe(true);
    expect(asDone(SHEET, after, "a", "3")?.name).toBe("Goblet squat");
  });
});
