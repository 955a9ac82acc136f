import { describe, expect, it } from "vitest";

import { readRamp, writeRamp } from "./ramp";

describe("warm-up steps", () => {
  it("are written as repetitions at a share of the work load", () => {
    const steps = [
      { reps: 5, share: 0.4 },
      { reps: 3, share: 0.625 },
    ];
    expect(writeRamp(steps)).toBe("5 at 40 %; 3 at 62.5 %");
    expect(readRamp(writeRamp(steps))).toEqual(steps);
  });

  it("may be typed shorter", () => {
    expect(readRamp("5x40, 3 @ 60%")).toEqual([
      { reps: 5, share: 0.4 },
      { reps: 3, share: 0.6 },
    ]);
  });

  it("are refused whole where one of them is not understood", () => {
    expect(readRamp("5 at 40 %; some more")).toBeNull();
  });
});
