import { describe, expect, it } from "vitest";

import type { Finding, Refusal } from "../answers";
import { groupsOf, merged, overrulesFor, reasonKey, wordingsOf } from "./stops";

function stop(check: string, set: number, part: Partial<Finding> = {}): Finding {
  return {
    severity: "stop",
    check,
    where: `set ${set}`,
    path: `weeks.0.sessions.0.exercises.0.sets.${set}`,
    what: `${check} stops it`,
    right: "mend it",
    may_overrule: true,
    ...part,
  };
}

const ALONE = [stop("alone", 0), stop("alone", 1)];
const RIG = stop("rig", 0);
const LOCKED = stop("locked", 0, { may_overrule: false });

function refusal(...stops: Finding[]): Refusal {
  return { athlete: "runa", stops };
}

describe("stops", () => {
  it("of one check stand together, wherever they are in the block", () => {
    const [alone, rig] = ALONE;
    expect(groupsOf([alone, RIG, rig].flatMap((each) => each ?? []))).toEqual([
      { check: "alone", mayOverrule: true, stops: ALONE },
      { check: "rig", mayOverrule: true, stops: [RIG] },
    ]);
  });

  it("in the same words are said once, with all their places", () => {
    const other = stop("alone", 2, { what: "another matter" });
    expect(wordingsOf([...ALONE, other]).map((each) => each.places)).toEqual([
      ["set 0", "set 1"],
      ["set 2"],
    ]);
  });
});

describe("setting stops aside", () => {
  it("takes one reason for all stops of a check, and none for another athlete’s", () => {
    const reasons = { [reasonKey("runa", "alone")]: "  her brother spots " };
    expect(overrulesFor(refusal(...ALONE), reasons)).toEqual(
      ALONE.map(({ check, path, what }) => ({ check, path, what, why: "her brother spots" })),
    );
    expect(overrulesFor({ ...refusal(...ALONE), athlete: "osk" }, reasons)).toBeNull();
  });

  it("waits until each check has a reason of three letters or more", () => {
    const alone = { [reasonKey("runa", "alone")]: "spotted" };
    expect(overrulesFor(refusal(...ALONE, RIG), alone)).toBeNull();
    const short = { ...alone, [reasonKey("runa", "rig")]: "ok " };
    expect(overrulesFor(refusal(...ALONE, RIG), short)).toBeNull();
  });

  it("is out of the question where one stop is final, whatever is written", () => {
    const reasons = {
      [reasonKey("runa", "alone")]: "spotted",
      [reasonKey("runa", "locked")]: "I am sure",
    };
    expect(overrulesFor(refusal(...ALONE, LOCKED), reasons)).toBeNull();
  });
});

describe("sending again", () => {
  const before = {
    sent: [{ athlete: "osk", revision: 3, sessions: 6 }],
    refused: [refusal(...ALONE), { athlete: "bram", stops: [LOCKED] }],
  };

  it("moves who got it now from the refused to the sent, and leaves the others", () => {
    const after = merged(before, {
      sent: [{ athlete: "runa", revision: 4, sessions: 6 }],
      refused: [],
    });
    expect(after.sent.map((each) => each.athlete)).toEqual(["osk", "runa"]);
    expect(after.refused.map((each) => each.athlete)).toEqual(["bram"]);
  });

  it("shows what stops it now, where it is something else than before", () => {
    const after = merged(before, { sent: [], refused: [refusal(RIG)] });
    expect(after.refused[0]).toEqual(refusal(RIG));
    expect(after.refused).toHaveLength(2);
  });
});
