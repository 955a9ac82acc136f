import { describe, expect, it } from "vitest";

import { calendarDate, day, dueOn, isoDay, mondayOf } from "./when";

const NOW = "2026-02-06T12:00:00";

describe("a moment in words", () => {
  it.each([
    ["2026-02-06T00:01:00", "today"],
    ["2026-02-05T23:59:00", "yesterday"],
    ["2026-02-07T08:00:00", "tomorrow"],
    ["2026-02-03T20:00:00", "Tuesday"],
    ["2026-01-30T20:00:00", "30 Jan 2026"],
    ["2026-02-13T20:00:00", "13 Feb 2026"],
  ])("%s is %s on a Friday", (at, words) => {
    expect(day(at, NOW)).toBe(words);
  });
});

describe("a calendar day", () => {
  it("is written as it stands, in whatever zone it is read", () => {
    expect(calendarDate("2026-03-31")).toBe("31 Mar 2026");
  });

  it.each([
    ["2026-02-06", "today"],
    ["2026-02-07", "tomorrow"],
    ["2026-02-05", "Thu 5 Feb"],
    ["2026-02-16", "Mon 16 Feb"],
  ])("of a plan, %s, is due %s on a Friday", (iso, words) => {
    expect(dueOn(iso, NOW)).toBe(words);
  });

  it.each([
    ["2026-02-06T12:00:00", "2026-02-02"],
    ["2026-02-02T00:30:00", "2026-02-02"],
    ["2026-02-08T23:30:00", "2026-02-02"],
    ["2026-03-01T12:00:00", "2026-02-23"],
  ])("of %s belongs to the week that began on %s", (at, monday) => {
    expect(mondayOf(at)).toBe(monday);
  });

  it("is the reader's, not Greenwich's", () => {
    expect(isoDay(new Date(2026, 1, 3, 0, 5).getTime())).toBe("2026-02-03");
  });
});
