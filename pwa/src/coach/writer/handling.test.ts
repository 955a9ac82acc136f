import { describe, expect, it } from "vitest";

import { marginInWords, movesInWords, type SheetOrder } from "./handling";

const ORDER: SheetOrder = {
  moves: [
    { side: "left", kg: 10, on: true },
    { side: "right", kg: 10, on: true },
    { side: "right", kg: 1.25, on: true },
  ],
  margin: 1.34,
};

describe("the order of loading", () => {
  it("names side and kilograms of each plate in turn", () => {
    expect(movesInWords(ORDER)).toBe("left 10, right 10, right 1.25");
  });

  it("says how near the bar comes to turning over", () => {
    expect(marginInWords(ORDER)).toBe("at the least 1.34 times what hangs would turn the bar over");
  });

  it("gives no figure where the bar cannot turn over", () => {
    expect(marginInWords({ ...ORDER, margin: 99 })).toBe("nothing here can turn the bar over");
  });
});
