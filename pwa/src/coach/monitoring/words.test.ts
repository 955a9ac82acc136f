import { describe, expect, it } from "vitest";

import type { LoadWeek, WorkWeek } from "../answers";
import { beyond, limbName } from "./limbs";
import { muscleName, musclesOf } from "./muscles";
import { changeInWords, monotonyInWords, strainInWords } from "./words";

const WEEK: LoadWeek = {
  monday: "2026-02-02",
  load_au: 1740,
  day_mean_au: 248.57,
  day_sd_au: 243.55,
  monotony: 1.021,
  strain_au: 1775.9,
  unrated_sessions: 0,
  whole: true,
};

describe("a week's monotony and strain", () => {
  it("are told to what they are worth", () => {
    expect([monotonyInWords(WEEK), strainInWords(WEEK)]).toEqual(["1.02", "1776"]);
  });

  it("are undefined, not infinite, where all days are equal", () => {
    const equal = { ...WEEK, monotony: null, strain_au: null };
    expect([monotonyInWords(equal), strainInWords(equal)]).toEqual(["undefined", "undefined"]);
  });

  it("wait until the week is over and a phone was heard since", () => {
    const now = { ...WEEK, monotony: null, strain_au: null, whole: false };
    expect(monotonyInWords(now)).toBe("not known yet");
  });
});

it("a change says its sign, and nothing where there is nothing to compare with", () => {
  const day = {
    on: "2026-02-02",
    load_au: 0,
    weighted_7_days_au: 0,
    weighted_28_days_au: 0,
    difference_au: 0,
    settled: false,
  };
  expect(changeInWords({ ...day, change_percent: 11.6 })).toBe("+12 %");
  expect(changeInWords({ ...day, change_percent: -35 })).toBe("−35 %");
  expect(changeInWords({ ...day, change_percent: null })).toBe("—");
});

describe("muscles", () => {
  const week = (hard_sets: WorkWeek["hard_sets"]): WorkWeek => ({
    monday: "2026-02-02",
    adherence: { planned_sets: 0, done_sets: 0, changed_sets: 0, skipped_sets: 0, unknown_sets: 0 },
    hard_sets,
    untold_sets: 0,
    tonnage_kg: 0,
    reps: 0,
    mean_resistance_kg: null,
    left_out_sets: 0,
    limbs: [],
  });

  it("come with a number for every week, the one with most first", () => {
    expect(musclesOf([week({ quads: 4 }), week({ quads: 3, "back-extensors": 7.5 })])).toEqual([
      { muscle: "back-extensors", sets: [0, 7.5] },
      { muscle: "quads", sets: [4, 3] },
    ]);
  });

  it("and limbs are named as they are spoken of", () => {
    expect(muscleName("back-extensors")).toBe("Back extensors");
    expect(limbName({ side: "left", limb: "upper-arm" })).toBe("Left upper arm");
  });
});

it("a limb that had more sessions than there may be days stands out, one that had as many does not", () => {
  const row = { monday: "2026-02-02", limb: "thigh", side: "left", minutes: 30, reps: 225 };
  const weeks = [3, 4].map((sessions) => ({ ...row, sessions }));
  expect(beyond(weeks, 3).map((week) => week.sessions)).toEqual([4]);
});
