// @vitest-environment node
import { describe, expect, test } from "vitest";

import { withBlock } from "./blocks";
import { placeInWords } from "./lines";
import { beatAt, tempoInWords } from "./tempo";
import { timed } from "./timed-panel";

const SLOW = { lowering_s: 4, pause_low_s: 1, lifting_s: 1, pause_high_s: 0 };

describe("a tempo", () => {
  test("is told in words", () => {
    expect(tempoInWords(SLOW)).toBe("4 s down, pause 1 s, 1 s up, no pause");
    expect(tempoInWords({ ...SLOW, lifting_s: 0 })).toBe("4 s down, pause 1 s, up fast, no pause");
  });

  test("is beaten second by second and begins again with the next rep", () => {
    const told = [0, 3, 4, 5, 6].map((second) => beatAt(SLOW, second));
    expect(told.map((beat) => `${beat?.rep} ${beat?.word} ${beat?.left}`)).toStrictEqual([
      "1 Down 4",
      "1 Down 1",
      "1 Pause 1",
      "1 Up 1",
      "2 Down 4",
    ]);
    expect(told.map((beat) => beat?.turns)).toStrictEqual([true, false, true, true, true]);
  });

  test("without any seconds has no beat", () => {
    const none = { lowering_s: 0, pause_low_s: 0, lifting_s: 0, pause_high_s: 0 };
    expect(beatAt(none, 3)).toBeNull();
  });
});

test.each([
  [0, "at the start of the lift"],
  [0.5, "halfway through the lift"],
  [0.3, "30 % of the way through the lift"],
  [1, "at the end of the lift"],
])("a hold at %d is %s", (position, words) => {
  expect(placeInWords(position)).toBe(words);
});

test("a stopwatch tells tenths below a minute and seconds from there on", () => {
  expect([4_270, 59_960, 61_400].map(timed)).toStrictEqual([4.3, 60, 61]);
});

test("repetitions of a set in blocks are those of its blocks", () => {
  const done = { load_kg: 100, reps: 6, rir: null, blocks: [2, 2, 2] };
  expect(withBlock(done, 1, 1)).toStrictEqual({ ...done, blocks: [2, 1, 2], reps: 5 });
  expect(withBlock(done, 0, -1).blocks).toStrictEqual([0, 2, 2]);
});
