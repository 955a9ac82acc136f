import { describe, expect, it } from "vitest";

import type { ExercisePlan, LoadWish } from "../../api/types";
import { firstRule, fits, RULE_NAMES, rulesFor, ruleInWords, type RuleName } from "./progressions";
import { exercise, set } from "./samples";

const NAMES = Object.keys(RULE_NAMES) as RuleName[];

function written(load: LoadWish, reps = 5): ExercisePlan {
  return exercise("pull", [{ key: "s1", reps, load }]);
}

function fitting(load: LoadWish): RuleName[] {
  return NAMES.filter((name) => fits(name, written(load)));
}

const ALWAYS: RuleName[] = ["repeat", "falling-reserve", "rising-sets", "light-week", "test-week"];

describe("which rules fit an exercise", () => {
  it("lets percentages rise, and kilograms be added", () => {
    expect(fitting({ basis: "percent", percent: 70 })).toEqual(
      expect.arrayContaining(["add-percent", "percent-by-week", "wave"]),
    );
    expect(fitting({ basis: "kg", kg: 60 })).toEqual(
      expect.arrayContaining(["add-kg", "add-percent", "double"]),
    );
    expect(fitting({ basis: "kg", kg: 60 })).not.toContain("wave");
  });

  it("leaves only rules without a load where the load is found by the reserve", () => {
    expect(new Set(fitting({ basis: "rir", rir: 2 }))).toEqual(new Set(ALWAYS));
  });

  it("offers the rule that the exercise has, even where it does not fit any more", () => {
    expect(rulesFor(written({ basis: "rir", rir: 2 }), "wave")).toHaveProperty("wave");
    expect(rulesFor(written({ basis: "rir", rir: 2 }), "repeat")).not.toHaveProperty("wave");
  });
});

describe("a rule as it begins", () => {
  it("starts percentages from the heaviest set", () => {
    const plan = exercise("pull", [set("s1", 5, 70), set("s2", 3, 77.5)]);
    expect(firstRule("percent-by-week", plan)).toEqual({
      rule: "percent-by-week",
      percents: [77.5, 80, 82.5, 85],
    });
    expect(firstRule("wave", plan)).toMatchObject({ percents: [77.5, 80, 82.5] });
  });

  it("starts repetitions and sets from what is written", () => {
    const plan = written({ basis: "kg", kg: 25 }, 8);
    expect(firstRule("double", plan)).toMatchObject({ reps_from: 8, reps_to: 10 });
    expect(firstRule("rising-sets", plan)).toMatchObject({ sets: [1, 2, 3] });
  });

  it("is of the kind that was asked for", () => {
    const plan = written({ basis: "percent", percent: 70 });
    expect(NAMES.map((name) => firstRule(name, plan).rule)).toEqual(NAMES);
  });
});

describe("a rule in words", () => {
  it("reads as a coach would say it", () => {
    expect(ruleInWords({ rule: "add-kg", kg: 2.5 })).toBe("+2.5 kg a week");
    expect(ruleInWords({ rule: "add-kg", kg: -5 })).toBe("−5 kg a week");
    expect(ruleInWords({ rule: "wave", percents: [70, 75, 80] })).toBe("wave of 70, 75, 80 %");
    expect(ruleInWords({ rule: "double", reps_from: 8, reps_to: 10, add_kg: 2.5 })).toBe(
      "8 to 10 reps, then +2.5 kg",
    );
    expect(ruleInWords({ rule: "light-week", every: 4, factor: 0.6 })).toBe(
      "every 4 weeks at 60 %",
    );
  });
});
