import { describe, expect, it } from "vitest";

import { own, within } from "./faults";

function fault(path: string) {
  return { where: path, path, what: "wrong", right: "right" };
}

const FAULTS = [
  "name",
  "weeks.0.sessions.1.exercises.1.sets.1.reps",
  "weeks.0.sessions.1.exercises.1.rest",
  "weeks.0.sessions.1.exercises.11.sets.0",
  "weeks.0.sessions.1.exercises",
].map(fault);

function paths(faults: readonly { readonly path: string }[]) {
  return faults.map((each) => each.path);
}

describe("a fault", () => {
  it("stands beside the line that it speaks of", () => {
    const path = "weeks.0.sessions.1.exercises.1.sets.1";
    expect(paths(within(FAULTS, path))).toEqual([`${path}.reps`]);
  });

  it("of the eleventh exercise is not shown at the first", () => {
    expect(within(FAULTS, "weeks.0.sessions.1.exercises.1")).toHaveLength(2);
  });

  it("of an exercise itself is told apart from those of its sets", () => {
    const path = "weeks.0.sessions.1.exercises.1";
    expect(paths(own(FAULTS, path, "sets"))).toEqual([`${path}.rest`]);
  });

  it("of a list as a whole belongs to what holds the list", () => {
    const path = "weeks.0.sessions.1";
    expect(paths(own(FAULTS, path, "exercises"))).toEqual([`${path}.exercises`]);
  });

  it("of the block itself is shown at the block", () => {
    expect(paths(own(FAULTS, "", "weeks"))).toEqual(["name"]);
  });
});
