import { describe, expect, test } from "vitest";

import { CURL, IN_ARMS, told } from "../../../tests/fakes/occlusion";
import type { SheetExercise } from "../../api/types";
import type { Side } from "../entry";
import { fold } from "../fold";
import type { Placed } from "../ledger-view";
import { limbOf, openSets, repsDone, sideOf, sidesOpen } from "./bouts";

const BOTH: SheetExercise = {
  ...CURL,
  details: { limb: "thigh", restriction: "wrap", both_at_once: true },
};

function done(set: string, reps: number, side?: Side): Placed {
  const body = { load_kg: 10, reps, rir: null, ...(side && { side }) };
  return told("set.done", body, 0, { ...IN_ARMS, set });
}

function records(...entries: Placed[]) {
  return fold(entries.map(({ entry }) => entry))[0]?.sets ?? new Map();
}

describe("one limb after the other", () => {
  test("all sets of the limb that was begun come before the other limb", () => {
    const begun = records(done("c-1", 30, "right"));
    expect(sidesOpen(CURL, begun)).toStrictEqual(["right", "left"]);
    expect(openSets(CURL, begun, "right").map(({ key }) => key)).toStrictEqual(["c-2"]);
    const right = records(done("c-1", 30, "right"), done("c-2", 14, "right"));
    expect(sidesOpen(CURL, right)).toStrictEqual(["left"]);
    expect(repsDone(CURL, right, "right")).toStrictEqual([30, 14]);
    expect(repsDone(CURL, right, "left")).toStrictEqual([]);
  });

  test("names each limb as entries do", () => {
    expect([limbOf(CURL, "left"), sideOf("left-upper-arm")]).toStrictEqual([
      "left-upper-arm",
      "left",
    ]);
  });
});

describe("both limbs at once", () => {
  test("is one bout", () => {
    expect(sidesOpen(BOTH, records())).toStrictEqual([null]);
    expect(sidesOpen(BOTH, records(done("c-1", 30), done("c-2", 15)))).toStrictEqual([]);
    expect([limbOf(BOTH, null), sideOf("thigh")]).toStrictEqual(["thigh", null]);
  });
});
