import { describe, expect, test } from "vitest";

import { CURL } from "../../../tests/fakes/occlusion";
import type { SheetExercise, SheetSet } from "../../api/types";
import { limbInWords, nextInWords, setsInWords, usualInWords } from "./words";

const TARGETS = [{ reps: 30 }, { reps: 15 }, { reps: 15 }, { reps: 15, to_failure: true }];
const sets = TARGETS.map((target, index): SheetSet => {
  return { key: `c-${index + 1}`, number: index + 1, target };
});

function cascade(exposure: number): SheetExercise {
  const { occlusion } = CURL;
  if (!occlusion) throw new Error("the curl has limits");
  return { ...CURL, sets, occlusion: { ...occlusion, exposure, expected: [36, 14.7, 11.5, 10.4] } };
}

describe("occlusion work in words", () => {
  test("names the limb and its side", () => {
    expect(limbInWords("left-upper-arm")).toBe("left upper arm");
    expect(limbInWords("thigh")).toBe("both thighs");
  });

  test("tells the cascade in one line", () => {
    expect(setsInWords(sets)).toBe("30-15-15-15, the last to failure");
    expect(setsInWords(sets.slice(0, 3))).toBe("30-15-15");
    expect(setsInWords([{ key: "a", number: 1, target: { to_failure: true } }])).toBe("failure");
  });

  test("says calmly what is usual, once sets go to failure", () => {
    const last = sets[3];
    const first = sets[0];
    if (!last || !first) throw new Error("there are four sets");
    const words = "11 and 10 are usual in the third and fourth. Fewer than 15 is no fault.";
    expect(usualInWords(cascade(5), last)).toBe(words);
    expect(usualInWords(cascade(5), first)).toBeNull();
    expect(usualInWords(cascade(4), last)).toBeNull();
  });

  test("tells next time's load with its reason", () => {
    const units = { pounds: false };
    expect(nextInWords({ step: "up", kg: 12.5 }, units)).toBe(
      "Next time 12.5 kg: the last set went above its target.",
    );
    expect(nextInWords({ step: "hold", kg: 10 }, units)).toBe("Next time the same, 10 kg.");
  });
});
