import { describe, expect, it } from "vitest";

import { linesOf } from "../block/lines";
import { exercise, session, set } from "../block/samples";
import { aroundBeneath, leftOut, lineBack, lineBeneath, putBack } from "./beneath";

const BASE = exercise("pull", [set("a", 3, 80), set("b", 3, 80), set("c", 5, 70)]);
const lines = (sets: typeof BASE.sets) => linesOf(sets, new Set());
const nameOf = (key: string) => ({ deadlift: "Deadlift" })[key] ?? key;

describe("a line of one athlete", () => {
  it("that is the block's has nothing beneath", () => {
    expect(lines(BASE.sets).map((line) => lineBeneath(line, BASE))).toEqual([null, null]);
  });

  it("has beneath what the block says of the same sets", () => {
    const [own] = lines([set("a", 3, 85), set("b", 3, 85)]);
    if (!own) throw new Error("the sample has no line");
    expect(lineBeneath(own, BASE)).toBe("2 sets of 3 at 80 % of the maximum");
  });

  it("goes back to the block's, and sets that only the athlete has go", () => {
    const sets = [set("a", 3, 85), set("x", 3, 85), set("c", 5, 65)];
    const [first] = lines(sets);
    if (!first) throw new Error("the sample has no line");
    expect(lineBack(sets, first, BASE)).toEqual([set("a", 3, 80), set("c", 5, 65)]);
  });
});

describe("an exercise of one athlete", () => {
  it("that differs in its sets alone has nothing around them to tell", () => {
    const own = { ...BASE, sets: [set("a", 3, 85), set("b", 3, 80), set("c", 5, 70)] };
    expect(aroundBeneath(own, BASE, nameOf)).toEqual([]);
  });

  it("tells what the block says: exercise, missing sets, rest", () => {
    const own = {
      ...BASE,
      exercise: "back-squat",
      rest: { from_s: 60, to_s: 90 },
      sets: BASE.sets.slice(0, 2),
    };
    expect(aroundBeneath(own, BASE, nameOf)).toEqual([
      "Deadlift",
      "2 sets of 3 at 80 % of the maximum, 1 set of 5 at 70 % of the maximum",
      "no rest said",
    ]);
  });
});

describe("what was left out", () => {
  const [a, b, c] = ["a", "b", "c"].map((key) => exercise(key, [set("s", 5, 70)]));
  if (!a || !b || !c) throw new Error("the sample is too short");
  const base = session("mon", 1, [a, b, c]).exercises;

  it("is named and comes back to its place", () => {
    expect(leftOut([a, c], base)).toEqual([b]);
    expect(putBack([a, c], base, "b")).toEqual([a, b, c]);
  });

  it("comes back first where what stood before it is left out as well", () => {
    expect(putBack([c], base, "b")).toEqual([b, c]);
  });
});
