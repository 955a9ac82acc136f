import { describe, expect, it } from "vitest";

import type { SpeedSession, SpeedSet, VelocityLine } from "../answers";
import { courseInWords, isBest, isMeasured } from "./speed-words";
import { drawn, lineInWords } from "./velocity-line";

const SET: SpeedSet = {
  number: 1,
  load_kg: 80,
  mean_resistance_kg: 80,
  reps: 3,
  mean_velocity_m_s: 0.9,
  fastest_velocity_m_s: 0.92,
  mean_power_w: 706,
  peak_power_w: 722,
  quality: null,
};

function session(course: SpeedSession["course"]): SpeedSession {
  return { on: "2026-02-04", session: "s", sets: [SET, { ...SET, number: 2 }], course };
}

describe("the course of speed sets", () => {
  it("says the best set, the rise before it and the drop after it", () => {
    const found = session({ best_set: 4, best_w: 811.6, rise_percent: 8.2, drop_percent: 5.9 });
    expect(courseInWords(found)).toBe(
      "Best in set 4 with 812 W: 8 % above the first set; 6 % lost by the last.",
    );
  });

  it("says no more than the best where nothing rose or fell", () => {
    const found = session({ best_set: 1, best_w: 700, rise_percent: 0, drop_percent: 0.2 });
    expect(courseInWords(found)).toBe("Best in set 1 with 700 W.");
    expect(found.sets.map((set) => isBest(found, set))).toEqual([true, false]);
  });

  it("is nothing where nobody measured", () => {
    expect(courseInWords(session(null))).toBe("");
    const unmeasured = { ...SET, mean_power_w: null };
    expect(isMeasured({ ...session(null), sets: [unmeasured] })).toBe(false);
  });
});

describe("a load-velocity line", () => {
  const line: VelocityLine = {
    intercept_m_s: 1.72,
    slope_m_s_per_kg: -0.0105,
    r2: 0.99,
    standard_error_m_s: 0.01,
    standard_error_kg: 1.1,
    lightest_kg: 60,
    heaviest_kg: 105,
    velocity_at_lightest_m_s: 1.09,
    velocity_at_heaviest_m_s: 0.62,
    minimal_velocity_m_s: 0.25,
    minimal_velocity_from: "27 men",
    maximum_kg: 140,
    maximum_low_kg: 130.8,
    maximum_high_kg: 149.2,
  };
  const points = [{ on: "2026-02-04", load_kg: 60, velocity_m_s: 1.1 }];

  it("is drawn to its loads, and on to the maximum in another stroke", () => {
    const [through, onwards, dots] = drawn({ points, line, why_no_line: "" });
    expect(through?.points.map((point) => point.x)).toEqual([60, 105]);
    expect(onwards).toMatchObject({ look: "dashed", points: [{ x: 105 }, { x: 140, y: 0.25 }] });
    expect(dots?.look).toBe("dots");
  });

  it("is left out where there is none, and the readings stay", () => {
    expect(drawn({ points, line: null, why_no_line: "one load" })).toHaveLength(1);
  });

  it("says the maximum with its band", () => {
    expect(lineInWords(line)).toBe("By this line the maximum is 140 kg (90 % band 131–149 kg).");
  });
});
