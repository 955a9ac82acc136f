import { describe, expect, it } from "vitest";

import type { ExercisePlan } from "../../api/types";
import type { OcclusionPattern } from "../answers";
import { patternOf, withPattern } from "./pattern";

const FIRST: OcclusionPattern = {
  key: "first",
  name: "first exposure",
  sets: [
    { reps: 15, to_failure: false },
    { reps: 15, to_failure: false },
  ],
  rest_s: [30, 60],
  load_percent: 20,
  most_tightness: 5,
  both_at_once: false,
};
const FAILURE: OcclusionPattern = {
  ...FIRST,
  key: "thirty-then-failure",
  sets: [
    { reps: 30, to_failure: false },
    { reps: 20, to_failure: true },
    { reps: 20, to_failure: true },
  ],
  load_percent: 30,
  most_tightness: null,
  both_at_once: true,
};

const CURLS: ExercisePlan = {
  key: "curls",
  exercise: "dumbbell-curl",
  method: "occlusion",
  details: { limb: "upper-arm", restriction: "wrap" },
  sets: [{ key: "s1", reps: 8, rir: 2, load: { basis: "kg", kg: 12 } }],
};

let drawn = 0;
const random = () => (drawn = (drawn + 0.137) % 1);
const put = (plan: ExercisePlan, pattern: OcclusionPattern) =>
  withPattern(plan, pattern, new Set(["s1"]), random);

describe("a pattern of occlusion sets", () => {
  it("fills sets, rests and load, and leaves the keys that there are", () => {
    const plan = put(CURLS, FIRST);
    expect(plan.sets[0]).toEqual({
      key: "s1",
      reps: 15,
      load: { basis: "percent", percent: 20 },
    });
    expect(new Set(plan.sets.map((set) => set.key)).size).toBe(2);
    expect(plan.rest).toEqual({ from_s: 30, to_s: 60 });
  });

  it("of a first exposure keeps the wrap loose and the limbs apart", () => {
    expect(put(CURLS, FIRST).details).toMatchObject({ tightness: 5, both_at_once: false });
  });

  it("never tightens what is looser already", () => {
    const loose: ExercisePlan = {
      ...CURLS,
      details: { limb: "upper-arm", restriction: "wrap", tightness: 3 },
    };
    expect(put(loose, FIRST).details).toMatchObject({ tightness: 3 });
    expect(put(loose, FAILURE).details).toMatchObject({ tightness: 3 });
  });

  it("gives a cuff no tightness", () => {
    const cuff: ExercisePlan = {
      ...CURLS,
      details: { limb: "thigh", restriction: "cuff", pressure_percent: 50 },
    };
    expect(put(cuff, FIRST).details).not.toHaveProperty("tightness");
  });

  it("stays a share of the lift that the exercise goes by", () => {
    const other: ExercisePlan = {
      ...CURLS,
      sets: [{ key: "s1", reps: 8, load: { basis: "percent", percent: 60, of: "barbell-curl" } }],
    };
    expect(put(other, FAILURE).sets[1]).toMatchObject({
      to_failure: true,
      load: { basis: "percent", percent: 30, of: "barbell-curl" },
    });
  });

  it("is found again in the exercise until its sets are changed", () => {
    const patterns = [FIRST, FAILURE];
    const plan = put(CURLS, FAILURE);
    expect(patternOf(plan, patterns)).toBe(FAILURE);
    expect(patternOf({ ...plan, sets: plan.sets.slice(1) }, patterns)).toBeUndefined();
    expect(patternOf(CURLS, patterns)).toBeUndefined();
  });
});
