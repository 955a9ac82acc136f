import { describe, expect, it } from "vitest";

import type { CatalogueEntry, ForAthlete } from "../answers";
import { canBeDone, EVERYTHING, found, musclesOf, thingsOf } from "./search";

const entry = (
  name: string,
  prime: readonly string[],
  more: Partial<CatalogueEntry> = {},
): CatalogueEntry => ({
  key: name.toLowerCase().replaceAll(" ", "-"),
  name,
  implement: "body",
  prime,
  helpers: [],
  needs: [],
  cues: [],
  alternatives: [],
  one_sided: false,
  needs_safeties: false,
  hands_sink: false,
  overhead: false,
  start_share: null,
  range_share: null,
  own: false,
  own_cues: false,
  archived: false,
  ...more,
});

const DIP = entry("Dip", ["chest", "triceps"], { needs: ["dip bars"] });
const FARMER = entry("Farmer's carry", ["grip"], { implement: "dumbbells" });
const NARROW = entry("Narrow push-up", ["triceps"], { helpers: ["front-shoulder"] });
const PRESS = entry("Bench press", ["chest"], { implement: "straight-bar", helpers: ["triceps"] });
const ROW = entry("Dumbbell row", ["lats"], { implement: "dumbbell", needs: ["bench"] });
const ALL = [ROW, PRESS, NARROW, FARMER, DIP];

const here = (key: string, more: Partial<ForAthlete> = {}): [string, ForAthlete] => [
  key,
  { key, lacking: [], avoid: [], way: null, told_by: "tape", ...more },
];

const names = (text: string) => found(ALL, { ...EVERYTHING, text }).map((one) => one.name);

describe("an exercise is found", () => {
  it.each([
    ["by a part of its name", "row", ["Dumbbell row"]],
    ["by words in any order", "press bench", ["Bench press"]],
    ["whatever the case and the marks", "FARMERS-carry", ["Farmer's carry"]],
    ["by what is lifted", "straight bar", ["Bench press"]],
    ["by what it needs", "dip bars", ["Dip"]],
    ["by a muscle", "front shoulder", ["Narrow push-up"]],
    ["not by the middle of a word", "ench", []],
  ])("%s", (_, text, wanted) => {
    expect(names(text)).toEqual(wanted);
  });

  it("first where its name begins so, then by other words of its name, then by the rest", () => {
    expect(names("bench")).toEqual(["Bench press", "Dumbbell row"]);
  });

  it("in the order of names where nothing is asked", () => {
    expect(names("  ")).toEqual([
      "Bench press",
      "Dip",
      "Dumbbell row",
      "Farmer's carry",
      "Narrow push-up",
    ]);
  });
});

describe("an archived exercise", () => {
  const old = entry("Old press", ["chest"], { archived: true });

  it("is found only where it is asked for", () => {
    expect(found([old, PRESS], EVERYTHING)).toEqual([PRESS]);
    expect(found([old, PRESS], { ...EVERYTHING, archived: true })).toEqual([PRESS, old]);
  });
});

describe("a muscle", () => {
  it("is trained by what has it as prime, and then by what it helps", () => {
    const listed = found(ALL, { ...EVERYTHING, muscle: "triceps" });
    expect(listed).toEqual([DIP, NARROW, PRESS]);
  });

  it("can be chosen once for all exercises", () => {
    expect(musclesOf(ALL)).toEqual(["chest", "grip", "lats", "triceps"]);
  });
});

it("things that exercises ask for are listed without what a kit describes by itself", () => {
  const squat = entry("Box squat", ["quads"], { needs: ["support", "box"] });
  expect(thingsOf([...ALL, squat])).toEqual(["bench", "box", "dip bars"]);
});

describe("what an athlete's kit can do", () => {
  const kit = new Map([
    here("dip", { lacking: ["dip bars"] }),
    here("bench-press", { avoid: ["left shoulder"] }),
    here("dumbbell-row"),
  ]);

  it("leaves out what is lacking and what an injury keeps away", () => {
    const listed = found(ALL, { ...EVERYTHING, onlyHere: true }, kit);
    expect(listed).toEqual([ROW, FARMER, NARROW]);
  });

  it("is not asked before an athlete is chosen", () => {
    expect(found(ALL, { ...EVERYTHING, onlyHere: true })).toHaveLength(ALL.length);
  });

  it("holds back nothing of which the server has not spoken", () => {
    expect(canBeDone(undefined)).toBe(true);
  });
});
