// @vitest-environment node
import { describe, expect, test } from "vitest";

import { movesInWords, type Order } from "./order-words";
import { rigInWords } from "./rig-words";

describe("what hangs where", () => {
  test("is told place by place, then how it is led", () => {
    const line =
      "Left “thin, marked R”; right “thin, marked L”: round the beam, both ends on the bar";
    expect(rigInWords(line)).toStrictEqual({
      places: ["Left “thin, marked R”", "Right “thin, marked L”"],
      how: "Round the beam, both ends on the bar.",
    });
  });

  test("keeps whole what the athlete has written on a band", () => {
    expect(rigInWords("In the middle “red: old; worn”: round the beam").places).toStrictEqual([
      "In the middle “red: old; worn”",
    ]);
  });

  test("stays one line where there is nothing to take apart", () => {
    const line = "1 × yard chain on each side, hung straight";
    expect(rigInWords(line)).toStrictEqual({ places: [line], how: null });
  });
});

describe("the order of loading a light bar", () => {
  const move = (side: "left" | "right", kg: number, on = true) => ({ side, kg, on });
  const naming = { plate: String, collarKg: 0.25 };
  const told = (moves: Order["moves"]) =>
    movesInWords(moves, naming).map(({ side, piece }) => `${side} ${piece}`);

  test("names the collar that goes on last, and no plate of the same mass before it", () => {
    const moves = [move("left", 0.25), move("right", 5), move("right", 0.25), move("left", 0.25)];
    expect(told(moves)).toStrictEqual(["left 0.25", "right 5", "right collar", "left collar"]);
  });

  test("names the collar that comes off first", () => {
    const moves = [
      move("left", 0.25, false),
      move("right", 0.25, false),
      move("left", 0.25, false),
      move("right", 5, false),
    ];
    expect(told(moves)).toStrictEqual(["left collar", "right collar", "left 0.25", "right 5"]);
  });
});
