import { describe, expect, it } from "vitest";

import type { ScreeningReason, ScreeningRecord } from "../answers";
import { recordInWords } from "./record-words";

const CLOT: ScreeningReason = {
  key: "clot",
  outcome: "locked",
  words: "a blood clot, past or suspected",
  opens: "",
  urgent: "",
  coverable: true,
  covered: true,
};

const KEPT = { number: 1, recorded_at: "2026-02-02T12:00:00Z", withdrawn_at: null };

describe("a record", () => {
  it("of a signature says who, when, the note, and what closes without it", () => {
    const record: ScreeningRecord = {
      ...KEPT,
      kind: "signature",
      body: { of: "s1", by: "Ottilie", on: "2026-02-02", note: "two a week", aim: "training" },
    };
    const words = recordInWords(record, []);
    expect(words.title).toBe("Signed by Ottilie, 2 Feb 2026");
    expect(words.lines).toEqual(["“two a week”"]);
    expect(words.closes).toContain("closed until it is signed");
  });

  it("of a clearance names the reasons in words, the days, and the limits", () => {
    const record: ScreeningRecord = {
      ...KEPT,
      kind: "clearance",
      body: {
        by: "Dr. Maro Tellin",
        profession: "nurse-practitioner",
        licence: "reg. 4711",
        on: "2026-02-02",
        until: "2026-08-01",
        covers: ["clot", "low-capacity"],
        limits: { load_percent: 25, in_words: "legs only" },
      },
    };
    const { title, lines, closes } = recordInWords(record, [CLOT]);
    expect(title).toBe("Cleared by Dr. Maro Tellin, nurse practitioner, reg. 4711");
    expect(lines).toEqual([
      "2 Feb 2026 to 1 Aug 2026, in company only",
      "Covers: a blood clot, past or suspected; low capacity",
      "At most: load 25 %, “legs only”",
    ]);
    expect(closes).toBe(
      "What it opened closes again: a blood clot, past or suspected; low capacity.",
    );
  });

  it("of a pressure says of which limb, position and cuff it is", () => {
    const record: ScreeningRecord = {
      ...KEPT,
      kind: "pressure",
      body: {
        mmhg: 180,
        on: "2026-02-02",
        by: "Maro Tellin",
        site: "left-thigh",
        position: "seated",
        width_mm: 110,
        material: "nylon",
      },
    };
    const { title, lines } = recordInWords(record, []);
    expect(title).toBe("180 mmHg, left thigh");
    expect(lines).toEqual(["seated, cuff 110 mm nylon, by Maro Tellin, 2 Feb 2026"]);
  });
});
