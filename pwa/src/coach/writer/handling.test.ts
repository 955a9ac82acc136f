import { describe, expect, it } from "vitest";

import type { Order } from "../../parts/order-words";
import { marginInWords, orderInWords } from "./handling";

const BAR = { kind: "oscillating-bar", name: "Ash bar", collars_kg: 0.5, sides: 2 };

const ORDER: Order = {
  moves: [
    { side: "left", kg: 10, on: true },
    { side: "right", kg: 10, on: true },
    { side: "right", kg: 0.25, on: true },
    { side: "left", kg: 0.25, on: true },
  ],
  margin: 1.34,
};

describe("the order of loading", () => {
  it("names the side and the piece of each move in turn", () => {
    expect(orderInWords(ORDER, BAR)).toBe("left 10, right 10, right collar, left collar");
  });

  it("says how near the bar comes to turning over", () => {
    expect(marginInWords(ORDER)).toBe("at the least 1.34 times what hangs would turn the bar over");
  });

  it("gives no figure where the bar cannot turn over", () => {
    expect(marginInWords({ ...ORDER, margin: 99 })).toBe("nothing here can turn the bar over");
  });
});
