import { describe, expect, it } from "vitest";

import type { Block, Week } from "../../api/types";
import { twoWeeks } from "./samples";
import {
  firstChoices,
  followedBy,
  nameOf,
  ruleFaults,
  ruleOf,
  rulesAsked,
  unfoldedFrom,
  withRule,
  withRuleForAll,
} from "./unfolding";

function firstWeek(block: Block): Week {
  const [week] = block.weeks;
  if (!week) throw new Error("the sample has weeks");
  return week;
}

const BLOCK = twoWeeks();
const WEEK = firstWeek(BLOCK);
const CHOICES = firstChoices(BLOCK, WEEK);

function grown(block: Block): Block {
  const more = ["w1.w2", "w1.w3", "w1.wide"].map((key) => ({ ...WEEK, key, name: key }));
  return { ...block, weeks: [...block.weeks, ...more] };
}

describe("weeks that came from a week before", () => {
  it("are known by their keys", () => {
    expect(unfoldedFrom(grown(BLOCK), WEEK).map((week) => week.key)).toEqual(["w1.w2", "w1.w3"]);
    expect(unfoldedFrom(BLOCK, WEEK)).toEqual([]);
  });

  it("say how many weeks to begin with", () => {
    expect(CHOICES.weeks).toBe(4);
    expect(firstChoices(grown(BLOCK), WEEK).weeks).toBe(3);
  });
});

describe("the week that new ones will stand before", () => {
  it("is the next one that has sessions and did not come from this one", () => {
    expect(followedBy(BLOCK, WEEK)).toBeUndefined();
    const later = { ...WEEK, key: "w9", name: "Week 9" };
    const block = { ...grown(BLOCK), weeks: [...grown(BLOCK).weeks.slice(0, 4), later] };
    expect(followedBy(block, WEEK)?.name).toBe("Week 9");
  });
});

describe("the rules of a week", () => {
  const [monday] = WEEK.sessions;
  const [pull, press] = monday?.exercises ?? [];
  if (!monday || !pull || !press) throw new Error("the sample has a Monday with two exercises");
  const wave = { rule: "wave", percents: [70, 75] } as const;
  const chosen = withRule(CHOICES, nameOf(monday, press), { ...wave, percents: [70, 75] });

  it("repeat until another one is chosen", () => {
    expect(ruleOf(CHOICES, monday, press)).toEqual({ rule: "repeat" });
    expect(ruleOf(chosen, monday, press)).toEqual(wave);
    expect(ruleOf(CHOICES, monday, { ...press, progression: { rule: "add-kg", kg: 5 } })).toEqual({
      rule: "add-kg",
      kg: 5,
    });
  });

  it("are asked for only where they were chosen", () => {
    expect(rulesAsked(WEEK, CHOICES)).toEqual([]);
    expect(rulesAsked(WEEK, chosen)).toEqual([
      { session: "mon", exercise: "press", progression: wave },
    ]);
  });

  it("may be one for all that it fits", () => {
    expect(rulesAsked(WEEK, withRuleForAll(CHOICES, WEEK, "add-percent"))).toHaveLength(3);
    expect(rulesAsked(WEEK, withRuleForAll(CHOICES, WEEK, "add-kg"))).toEqual([]);
  });

  it("bear their faults, whether the server tells them by place or by number", () => {
    const asked = rulesAsked(WEEK, chosen);
    const path = "weeks.0.sessions.0.exercises.1";
    const faults = [`${path}.progression`, "rules.0.progression.percents", "rules.1", path].map(
      (at) => ({ where: "", path: at, what: "is wrong", right: "" }),
    );
    const mine = ruleFaults(faults, path, asked, { session: "mon", exercise: "press" });
    expect(mine.map((fault) => fault.path)).toEqual([
      `${path}.progression`,
      "rules.0.progression.percents",
    ]);
  });
});
