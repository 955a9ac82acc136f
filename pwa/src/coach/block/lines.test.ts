import { describe, expect, it } from "vitest";

import {
  addLine,
  asksTheSame,
  changeLine,
  copyLine,
  countLine,
  linesOf,
  moveLine,
  removeLine,
  type Line,
} from "./lines";
import { dice, set } from "./samples";

const SETS = [set("a", 3, 80), set("b", 3, 80), set("c", 5, 70)];
const NONE: ReadonlySet<string> = new Set();

function line(at: number): Line {
  const found = linesOf(SETS, NONE)[at];
  if (!found) throw new Error(`the sample has no line ${at}`);
  return found;
}

function keys(sets: readonly { readonly key: string }[]): string {
  return sets.map((one) => one.key).join(" ");
}

describe("lines", () => {
  it("take sets together that follow each other and ask for the same", () => {
    expect(linesOf(SETS, NONE).map((each) => keys(each.sets))).toEqual(["a b", "c"]);
  });

  it("are apart where something else stands between", () => {
    const waves = [set("a", 3, 80), set("b", 2, 85), set("c", 3, 80)];
    expect(linesOf(waves, NONE)).toHaveLength(3);
  });

  it("stay apart where a line began before, though it now asks the same", () => {
    expect(linesOf(SETS, new Set(["b"])).map((each) => keys(each.sets))).toEqual(["a", "b", "c"]);
  });

  it("see no difference in the order of fields", () => {
    const one = { key: "a", reps: 3, load: { basis: "percent", percent: 80 } } as const;
    const other = { load: { percent: 80, basis: "percent" }, reps: 3, key: "b" } as const;
    expect(asksTheSame(one, other)).toBe(true);
  });
});

describe("a change to a line", () => {
  it("changes all its sets and no other, and no key", () => {
    const changed = changeLine(SETS, line(0), { reps: 2 });
    expect(changed.map((one) => one.reps)).toEqual([2, 2, 5]);
    expect(keys(changed)).toBe("a b c");
  });

  it("takes a field away that is set to nothing", () => {
    const asked = changeLine(SETS, line(0), { rir: 2 });
    expect(changeLine(asked, line(0), { rir: undefined })).toEqual(SETS);
  });
});

describe("the number of sets in a line", () => {
  it("grows at its end, with fresh keys, and the keys before stay", () => {
    const more = countLine(SETS, line(0), 4, new Set(["a", "b", "c"]), dice());
    expect(more.map((one) => one.reps)).toEqual([3, 3, 3, 3, 5]);
    expect(new Set(more.map((one) => one.key)).size).toBe(5);
    expect(keys(more.slice(0, 2))).toBe("a b");
  });

  it("shrinks at its end and never below one", () => {
    expect(keys(countLine(SETS, line(0), 0, NONE, dice()))).toBe("a c");
  });

  it("never takes an exercise beyond the thirty sets that a document holds", () => {
    expect(countLine(SETS, line(0), 99, NONE, dice())).toHaveLength(30);
  });
});

describe("lines as a whole", () => {
  it("are added at the end", () => {
    const asks = { reps: 8, load: { basis: "body" } } as const;
    expect(addLine(SETS, asks, 2, NONE, dice()).map((one) => one.reps)).toEqual([3, 3, 5, 8, 8]);
  });

  it("are copied right after themselves, with keys of their own", () => {
    const copied = copyLine(SETS, line(0), new Set(["a", "b", "c"]), dice());
    expect(copied.map((one) => one.reps)).toEqual([3, 3, 3, 3, 5]);
    expect(new Set(copied.map((one) => one.key)).size).toBe(5);
  });

  it("change places with all their sets", () => {
    expect(keys(moveLine(linesOf(SETS, NONE), 0, 1))).toBe("c a b");
  });

  it("are removed with all their sets", () => {
    expect(keys(removeLine(SETS, line(0)))).toBe("c");
  });
});
