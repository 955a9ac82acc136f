import { describe, expect, it } from "vitest";

import type { LoadSheet, SheetExercise } from "../../api/types";
import {
  askedInWords,
  boxesOf,
  marksOf,
  paperLoad,
  warmUpInWords,
  wearInWords,
  weekAhead,
  weeksOf,
} from "./paper-words";

const BAR = { kind: "barbell", name: "Steel bar", mass_kg: 20, sides: 2 };

function exercise(more: Partial<SheetExercise> = {}): SheetExercise {
  return {
    key: "a",
    exercise: "back-squat",
    name: "Back squat",
    method: "straight",
    implement: BAR,
    loads: [{ kg: 92.5, position: 4527, side: [25, 10, 1.25] }],
    sets: [{ key: "a1", number: 1, target: { reps: 5, rir: 3 }, load: 0 }],
    ...more,
  };
}

function sheet(week: string, on: string): LoadSheet {
  return { session: on, week, week_name: `Week ${week}`, on } as LoadSheet;
}

describe("what is asked", () => {
  it("is told with its reserve", () => {
    expect(askedInWords({ reps: 5, rir: 3 }, "straight")).toBe("5 reps, 3 in reserve");
  });

  it("has no reserve where it goes to failure", () => {
    expect(askedInWords({ reps: 30, rir: 0, to_failure: true }, "occlusion")).toBe(
      "30 reps, on to failure",
    );
  });

  it("says that both sides are meant", () => {
    expect(askedInWords({ reps: 8 }, "one-sided")).toBe("8 reps, each side");
  });
});

describe("the load", () => {
  it("is told with the plates of a side", () => {
    const one = exercise();
    expect(one.sets.map((set) => paperLoad(one, set))).toEqual([
      { load: "92.5 kg", made: "25 + 10 + 1.25 a side" },
    ]);
  });

  it("is found by feel where none could be worked out, and says how", () => {
    const one = exercise({
      sets: [{ key: "a1", number: 1, target: { reps: 5 }, why: "start light" }],
    });
    expect(one.sets.map((set) => paperLoad(one, set))).toEqual([
      { load: "by feel", made: "start light" },
    ]);
  });
});

describe("the warm-up", () => {
  it("says for each set what hangs on a side", () => {
    const ramped = exercise({
      loads: [
        { kg: 20, position: 2996, side: [] },
        { kg: 92.5, position: 4527, side: [25, 10, 1.25] },
      ],
      ramp: [{ reps: 8, load: 0, share: 0.4 }],
    });
    expect(warmUpInWords(ramped)).toEqual(["8 × 20 kg (bare)"]);
  });
});

describe("the boxes", () => {
  it("are for each side where it is done one side at a time", () => {
    expect(boxesOf(exercise({ method: "one-sided" }))).toEqual(["Left", "Right", "Reserve"]);
  });

  it("are for seconds where a position is held", () => {
    const held = exercise({ sets: [{ key: "a1", number: 1, target: { seconds: 40 } }] });
    expect(boxesOf(held)).toEqual(["Seconds"]);
  });
});

describe("the marks", () => {
  it("number those that are done in turn", () => {
    const all = [
      exercise({ key: "a" }),
      exercise({ key: "b", group: "x" }),
      exercise({ key: "c", group: "x" }),
      exercise({ key: "d" }),
    ];
    expect(marksOf(all)).toEqual(["A", "B1", "B2", "C"]);
  });
});

describe("the weeks", () => {
  const sheets = [sheet("1", "2026-02-02"), sheet("1", "2026-02-06"), sheet("2", "2026-02-09")];

  it("are each named once", () => {
    expect(weeksOf(sheets)).toEqual({ "1": "Week 1", "2": "Week 2" });
  });

  it("begin with the one ahead", () => {
    expect(weekAhead(sheets, "2026-02-07")).toBe("2");
    expect(weekAhead(sheets, "2027-01-01")).toBe("2");
  });
});

describe("the wear of a wrap", () => {
  it("is told with its limit and the break after it", () => {
    const wrapped = exercise({
      method: "occlusion",
      occlusion: {
        exposure: 5,
        rung: "the full dose",
        wear_s: 390,
        limit_s: 600,
        break_s: 180,
        gap_h: 48,
        away_days: 21,
        most_tightness: 6,
        until: "2026-08-01",
      },
    });
    expect(wearInWords(wrapped)).toEqual([
      "Tightness: at most 6 of 10.",
      "On for about 6:30 min; off after 10 min at the latest.",
      "Then off for at least 3 min.",
      "Open until 1 Aug 2026, by the screening.",
    ]);
  });
});
