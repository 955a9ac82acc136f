import { describe, expect, it } from "vitest";

import type { RigOffer } from "../answers";
import { remarksOf, sharedRemarks } from "./rig-remarks";

const GUESSED = "range worked out from stature: measure the hands' height at start and end";

function offer(remarks: RigOffer["remarks"], unmeasured: readonly string[] = []): RigOffer {
  const kg = { start_kg: 0, mean_kg: 5, lockout_kg: 13, kg: 13, off_kg: 1, doubt_kg: 0.1 };
  const rig = { part: "bands", share_percent: 20 } as const;
  return { rig, words: "", ...kg, share_percent: 21, unmeasured, remarks };
}

const note = (words: string) => ({ severity: "note", words }) as const;
const warn = (words: string) => ({ severity: "warn", words }) as const;

describe("remarks on rigs", () => {
  it("that all make are told once, the others with their rig", () => {
    const one = offer([note(GUESSED), note("pulls up to 7.0 kg sideways")]);
    const other = offer([warn("slack at the start: thin"), note(GUESSED)]);
    const shared = sharedRemarks([one, other]);
    expect(shared).toEqual([note(GUESSED)]);
    expect(remarksOf(one, shared)).toEqual([note("pulls up to 7.0 kg sideways")]);
    expect(remarksOf(other, shared)).toEqual([warn("slack at the start: thin")]);
  });

  it("stay with the rig where there is only one", () => {
    expect(sharedRemarks([offer([note(GUESSED)])])).toEqual([]);
  });

  it("put warnings before notes", () => {
    const one = offer([note("pulls sideways"), warn("slack at the start: thin")]);
    expect(remarksOf(one, []).map(({ severity }) => severity)).toEqual(["warn", "note"]);
  });

  it("name bands that nobody measured in one line", () => {
    const told = ["L", "R"].map((label) =>
      warn(`${label}: estimated from its size, measure this band`),
    );
    expect(remarksOf(offer(told, ["L", "R"]), [])).toEqual([warn("not measured: L; R")]);
  });
});
