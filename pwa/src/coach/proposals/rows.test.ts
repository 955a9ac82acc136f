import { describe, expect, it } from "vitest";

import type { SessionProposals, SetProposal } from "../answers";
import { acceptedOf, figuresOf, rowsOf } from "./rows";

function set(number: number, more: Partial<SetProposal> = {}): SetProposal {
  return {
    set: `a${number}`,
    number,
    kind: "proposed",
    from_kg: 85,
    to_kg: 87.5,
    why: "two notches up: 3 reps at 4 in reserve, planned 2",
    ...more,
  };
}

function session(...sets: readonly SetProposal[]): SessionProposals {
  return {
    session: "mon",
    name: "Legs",
    week_name: "Week 2",
    on: "2026-02-09",
    exercises: [{ key: "a", name: "Back squat", sets }],
  };
}

describe("the rows of a session", () => {
  it("tells sets together that go the same way", () => {
    const rows = rowsOf(session(set(1), set(2), set(3, { from_kg: 75, to_kg: 77.5 })));
    expect(rows.map((row) => row.sets)).toEqual(["sets 1–2", "set 3"]);
  });

  it("keeps apart what can be accepted and what stays", () => {
    const rows = rowsOf(session(set(1), set(2, { kind: "stays", to_kg: null })));
    expect(rows.map((row) => row.first.kind)).toEqual(["proposed", "stays"]);
  });
});

describe("the figures of a row", () => {
  it("go from the load now to the one to come", () => {
    expect(figuresOf(set(1))).toBe("85 → 87.5 kg");
  });

  it("are one load where it stays, and none where none is known", () => {
    expect(figuresOf(set(1, { to_kg: null }))).toBe("85 kg");
    expect(figuresOf(set(1, { from_kg: null, to_kg: null }))).toBe("");
  });
});

describe("what is accepted", () => {
  it("is every set of the rows that are left ticked, with the load that was shown", () => {
    const rows = rowsOf(session(set(1), set(2), set(3, { from_kg: 75, to_kg: 77.5 })));
    const left = new Set([rows[1]?.key ?? ""]);
    expect(acceptedOf(rows, left)).toEqual([
      { session: "mon", set: "a1", kg: 87.5 },
      { session: "mon", set: "a2", kg: 87.5 },
    ]);
  });

  it("is never what follows by itself", () => {
    expect(acceptedOf(rowsOf(session(set(1, { kind: "follows" }))), new Set())).toEqual([]);
  });
});
