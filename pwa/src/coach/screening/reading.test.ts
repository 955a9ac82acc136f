import { describe, expect, it } from "vitest";

import type { ScreeningPage, ScreeningReason, ScreeningReply } from "../answers";
import { urgentIn } from "./urgent";
import { needsNote, sorted, stillMissing, THE_REST, ticksNeeded, wantsSignature } from "./reading";

function reply(key: string, outcome = ""): ScreeningReply {
  return { key, question: `${key}?`, answer: outcome ? "yes" : "no", outcome };
}

function reason(key: string, part: Partial<ScreeningReason>): ScreeningReason {
  return {
    key,
    outcome: "needs-reading",
    words: key,
    opens: "",
    urgent: "",
    coverable: true,
    covered: false,
    ...part,
  };
}

const ANSWERS = [reply("clot", "locked"), reply("lung"), reply("smoking", "needs-reading")];
const LATEST = { id: "s1", on: "2026-02-02", kind: "screening", answers: ANSWERS } as const;

describe("reading a screening", () => {
  it("asks for a tick on each answer that leads somewhere, and one for all others", () => {
    expect(ticksNeeded(sorted(LATEST))).toEqual(["clot", "smoking", THE_REST]);
  });

  it("asks for one tick where nothing leads anywhere", () => {
    expect(ticksNeeded(sorted({ answers: [reply("lung"), reply("heart")] }))).toEqual([THE_REST]);
  });

  it("says what is missing until every tick is set", () => {
    const needed = ticksNeeded(sorted(LATEST));
    const none = { needed: false, text: "" };
    expect(stillMissing(needed, new Set(["clot"]), none)).toBe("Still missing: 2 ticks above.");
    expect(stillMissing(needed, new Set(needed), none)).toBe("");
  });

  it("asks for a note where a caution is counted; blanks are none", () => {
    const note = { needed: true, text: "  " };
    expect(stillMissing([], new Set(), note)).toBe(
      "Still missing: a note on the counted cautions.",
    );
    expect(stillMissing([], new Set(), { ...note, text: "talked about" })).toBe("");
  });
});

describe("a note with the signature", () => {
  it("is needed for a counted caution that nobody has cleared", () => {
    expect(needsNote({ reasons: [reason("smoking", {})] })).toBe(true);
    expect(needsNote({ reasons: [reason("smoking", { covered: true })] })).toBe(false);
  });

  it("is not needed for being unread, nor for what only a clinician can open", () => {
    const reasons = [reason("unread", {}), reason("clot", { outcome: "locked" })];
    expect(needsNote({ reasons })).toBe(false);
  });
});

describe("a signature", () => {
  const page = (part: Partial<ScreeningPage>) => ({
    latest: LATEST,
    signed: false,
    reasons: [],
    ...part,
  });

  it("is wanted for answers that nobody has read, and for none at all is not", () => {
    expect(wantsSignature(page({}))).toBe(true);
    expect(wantsSignature(page({ latest: null }))).toBe(false);
  });

  it("without the note that a caution needs is wanted again", () => {
    expect(wantsSignature(page({ signed: true }))).toBe(false);
    expect(wantsSignature(page({ signed: true, reasons: [reason("smoking", {})] }))).toBe(true);
  });
});

describe("what cannot wait", () => {
  it("is told once, with every reason that asks for it and still stands", () => {
    const urgent = "Get medical care today.";
    const reasons = [
      reason("dark-urine", { urgent, words: "dark urine" }),
      reason("weakness", { urgent, words: "weak" }),
      reason("old", { urgent, words: "cleared long ago", covered: true }),
    ];
    const lock = { do_now: [urgent] } as unknown as ScreeningPage["lock"];
    expect(urgentIn({ lock, reasons })).toEqual([{ act: urgent, because: ["dark urine", "weak"] }]);
  });
});
