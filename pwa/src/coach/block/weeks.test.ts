import { describe, expect, it } from "vitest";

import type { Block } from "../../api/types";
import { dice, twoWeeks } from "./samples";
import {
  addSession,
  addWeek,
  copyWeek,
  findSession,
  freeDay,
  moveWeek,
  newBlock,
  putSession,
  removeSession,
  removeWeek,
  setDay,
  swapSession,
} from "./weeks";

function sessionKeys(block: Block): string[] {
  return block.weeks.flatMap((week) => week.sessions.map((session) => session.key));
}

function days(block: Block, week: number): number[] {
  return block.weeks[week]?.sessions.map((session) => session.day) ?? [];
}

describe("a new block", () => {
  it("has two empty weeks with keys of their own", () => {
    const block = newBlock("Winter", dice());
    expect(block.weeks.map((week) => week.name)).toEqual(["Week 1", "Week 2"]);
    expect(new Set([block.key, ...block.weeks.map((week) => week.key)]).size).toBe(3);
  });
});

describe("copying a week into the next", () => {
  it("fills the week that follows where that is empty, and keeps its name and key", () => {
    const block = copyWeek(twoWeeks(), 0, dice());
    expect(block.weeks).toHaveLength(2);
    expect(block.weeks[1]).toMatchObject({ key: "w2", name: "Week 2" });
    expect(days(block, 1)).toEqual([1, 4]);
  });

  it("puts a new week between where the next one is written already", () => {
    const block = copyWeek(copyWeek(twoWeeks(), 0, dice()), 0, dice(7));
    expect(block.weeks).toHaveLength(3);
    expect(block.weeks[2]?.key).toBe("w2");
  });

  it("names the week after the last one by the next number", () => {
    const block = copyWeek(copyWeek(twoWeeks(), 0, dice()), 1, dice(7));
    expect(block.weeks.map((week) => week.name)).toEqual(["Week 1", "Week 2", "Week 3"]);
  });

  it("gives every session a new key, for no two sessions of a block share one", () => {
    const block = copyWeek(twoWeeks(), 0, dice());
    expect(new Set(sessionKeys(block)).size).toBe(4);
  });

  it("keeps the keys of exercises and sets, so that a line is the same line in each week", () => {
    const block = copyWeek(twoWeeks(), 0, dice());
    const [before, after] = block.weeks.map((week) => week.sessions[0]?.exercises);
    expect(after).toEqual(before);
  });

  it("leaves the block that was copied from as it was", () => {
    const block = twoWeeks();
    copyWeek(block, 0, dice());
    expect(block).toEqual(twoWeeks());
  });
});

describe("sessions of a week", () => {
  it("stand in the order of their days", () => {
    expect(days(addSession(twoWeeks(), 0, 2, dice()), 0)).toEqual([1, 2, 4]);
  });

  it("move when their day changes, and keep their key", () => {
    const block = setDay(twoWeeks(), { week: 0, session: 0 }, 6);
    expect(sessionKeys(block)).toEqual(["thu", "mon"]);
    expect(findSession(block, "mon")).toEqual({ week: 0, session: 1 });
  });

  it("exchange places and days with their neighbour", () => {
    const block = swapSession(twoWeeks(), { week: 0, session: 0 }, 1);
    expect(sessionKeys(block)).toEqual(["thu", "mon"]);
    expect(days(block, 0)).toEqual([1, 4]);
  });

  it("stay where they are when there is no neighbour", () => {
    expect(swapSession(twoWeeks(), { week: 0, session: 0 }, -1)).toEqual(twoWeeks());
  });

  it("can be pasted into another week under a key of their own", () => {
    const block = twoWeeks();
    const monday = block.weeks[0]?.sessions[0];
    if (!monday) throw new Error("the sample has a Monday");
    const pasted = putSession(block, 1, monday, dice());
    expect(days(pasted, 1)).toEqual([1]);
    expect(new Set(sessionKeys(pasted)).size).toBe(3);
  });

  it("go without touching the others", () => {
    expect(sessionKeys(removeSession(twoWeeks(), { week: 0, session: 0 }))).toEqual(["thu"]);
  });

  it("are first put on Monday, Wednesday and Friday", () => {
    expect(freeDay({ key: "w", name: "W", sessions: [] })).toBe(1);
    const [week] = twoWeeks().weeks;
    expect(week && freeDay(week)).toBe(3);
  });
});

describe("weeks", () => {
  it("are added at the end and never under a key that is taken", () => {
    const block = addWeek(twoWeeks(), dice());
    expect(block.weeks.map((week) => week.name)).toEqual(["Week 1", "Week 2", "Week 3"]);
    expect(new Set(block.weeks.map((week) => week.key)).size).toBe(3);
  });

  it("can be moved and removed", () => {
    expect(moveWeek(twoWeeks(), 0, 1).weeks.map((week) => week.key)).toEqual(["w2", "w1"]);
    expect(removeWeek(twoWeeks(), 0).weeks.map((week) => week.key)).toEqual(["w2"]);
  });
});
