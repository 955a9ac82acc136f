import { describe, expect, it } from "vitest";

import { firstPlace, placeAfter } from "./place";
import { dice, twoWeeks } from "./samples";
import { addWeek, moveWeek, removeSession, removeWeek, setDay } from "./weeks";

const MONDAY = { week: 0, session: 0 };

describe("the place of the writer", () => {
  it("is at first the first session that there is", () => {
    expect(firstPlace(twoWeeks())).toEqual(MONDAY);
    expect(firstPlace(moveWeek(twoWeeks(), 0, 1))).toEqual({ week: 1, session: 0 });
    expect(firstPlace({ key: "b", name: "B", weeks: [] })).toEqual({ week: 0, session: null });
  });

  it("goes with its session when that changes its day", () => {
    const after = setDay(twoWeeks(), MONDAY, 7);
    expect(placeAfter(MONDAY, twoWeeks(), after)).toEqual({ week: 0, session: 1 });
  });

  it("goes with its session when the week moves", () => {
    const after = moveWeek(twoWeeks(), 0, 1);
    expect(placeAfter(MONDAY, twoWeeks(), after)).toEqual({ week: 1, session: 0 });
  });

  it("goes with its week where no session is chosen", () => {
    const place = { week: 1, session: null };
    const after = moveWeek(twoWeeks(), 1, 0);
    expect(placeAfter(place, twoWeeks(), after)).toEqual({ week: 0, session: null });
  });

  it("stays in the week when an undo takes the session away", () => {
    const after = removeSession(twoWeeks(), MONDAY);
    expect(placeAfter(MONDAY, twoWeeks(), after)).toEqual({ week: 0, session: null });
  });

  it("goes to the session that a redo brings back", () => {
    const without = removeSession(twoWeeks(), MONDAY);
    const place = { week: 0, session: null };
    expect(placeAfter(place, without, twoWeeks())).toEqual(MONDAY);
  });

  it("is never outside the block, whatever is taken away", () => {
    const before = addWeek(twoWeeks(), dice());
    const after = removeWeek(before, 2);
    expect(placeAfter({ week: 2, session: null }, before, after)).toEqual({
      week: 1,
      session: null,
    });
  });
});
