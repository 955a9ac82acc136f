import { describe, expect, it } from "vitest";

import type { Finding } from "../answers";
import {
  countsInWords,
  countsOf,
  nextAfter,
  placeOf,
  setsInWords,
  toldOnce,
  topicOf,
} from "./findings";

const SQUAT = "weeks.0.sessions.1.exercises.2";

function finding(path: string, part: Partial<Finding> = {}): Finding {
  return {
    severity: "warn",
    check: "load-off",
    where: path,
    path,
    what: "3 % off",
    right: "another load",
    may_overrule: false,
    ...part,
  };
}

const ALONE = finding(`${SQUAT}.sets.0`, { severity: "stop", check: "alone", what: "alone" });
const OFF = [0, 1, 2].map((set) => finding(`${SQUAT}.sets.${set}`));

describe("findings of equal sets", () => {
  it("are told once, and counted once", () => {
    expect(toldOnce([ALONE, ...OFF])).toEqual([ALONE, OFF[0]]);
    expect(countsInWords(countsOf([ALONE, ...OFF]))).toBe("1 stop, 1 to look at");
  });

  it("are told apart from those of another exercise, and from other words", () => {
    const other = finding("weeks.0.sessions.1.exercises.3.sets.0");
    const words = finding(`${SQUAT}.sets.0`, { what: "5 % off" });
    expect(toldOnce([...OFF, other, words])).toHaveLength(3);
  });

  it("name the sets only where not the whole line is meant", () => {
    const topic = topicOf(finding(`${SQUAT}.sets.0`));
    expect(setsInWords(OFF, topic, 3)).toBe("");
    expect(setsInWords(OFF, topic, 5)).toBe("sets 1, 2, 3");
    expect(setsInWords(OFF.slice(1, 2), topic, 5)).toBe("set 2");
  });

  it("name no set where the exercise is meant", () => {
    const whole = finding(SQUAT);
    expect(setsInWords([whole], topicOf(whole), 0)).toBe("");
  });
});

describe("the count", () => {
  it("puts warnings and notes together, for neither forbids to send", () => {
    const note = finding(SQUAT, { severity: "note", what: "travel" });
    expect(countsInWords(countsOf([finding(SQUAT), note]))).toBe("2 to look at");
  });

  it("says nothing of nothing", () => {
    expect(countsInWords(countsOf([]))).toBe("");
  });
});

describe("the way through the findings", () => {
  const all = [ALONE, ...OFF, finding("weeks.1", { check: "sets-jump" })];

  it("goes from one to the next and round again", () => {
    const first = nextAfter(all, null);
    const second = first && nextAfter(all, topicOf(first));
    const third = second && nextAfter(all, topicOf(second));
    expect([first?.check, second?.check, third?.check]).toEqual(["alone", "load-off", "sets-jump"]);
    expect(third && nextAfter(all, topicOf(third))).toBe(ALONE);
  });

  it("begins anew where the last one has been mended", () => {
    expect(nextAfter(all, "mended since")).toBe(ALONE);
  });

  it("has no next where there is none", () => {
    expect(nextAfter([], null)).toBeUndefined();
  });

  it.each([
    ["", null],
    ["weeks.3", { week: 3, session: null }],
    ["weeks.0.sessions.12.exercises.2.sets.0", { week: 0, session: 12 }],
  ])("leads to the session of %j", (path, place) => {
    expect(placeOf({ path })).toEqual(place);
  });
});
