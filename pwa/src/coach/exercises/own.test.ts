import { describe, expect, it } from "vitest";

import type { CatalogueEntry } from "../answers";
import { inLine, outOfLine } from "./lines";
import { BLANK, sent, written } from "./own";

describe("an own exercise", () => {
  it("is written without what the server alone says of it", () => {
    const listed: CatalogueEntry = {
      ...BLANK,
      key: "own-barrel-lift",
      name: "Barrel lift",
      own: true,
      own_cues: false,
      archived: false,
    };
    expect(written(listed)).toEqual({ ...BLANK, name: "Barrel lift" });
  });

  it("goes up without heights that are not known", () => {
    expect(Object.keys(sent(BLANK))).not.toContain("start_share");
    expect(sent({ ...BLANK, start_share: 0 })).toHaveProperty("start_share", 0);
  });
});

describe("a line of several", () => {
  it.each([
    ["bench, box", ",", ["bench", "box"]],
    [" Hug it;; Stand tall ; ", ";", ["Hug it", "Stand tall"]],
    ["", ",", []],
  ] as const)("%s is read", (text, between, parts) => {
    expect(outOfLine(text, between)).toEqual(parts);
  });

  it("keeps a comma within a cue", () => {
    expect(outOfLine(inLine(["Down, then up", "Breathe"], ";"), ";")).toEqual([
      "Down, then up",
      "Breathe",
    ]);
  });
});
