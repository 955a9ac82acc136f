import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  begin,
  carry,
  difference,
  evidenceN,
  type Ladder,
  type NotchTable,
  reckonedAt,
  type Suggestion,
  suggest,
  walk,
  type WalkState,
} from "./notches";

type WrittenTurn = [
  shown: [index: number, notch: number, reason: Suggestion["reason"]],
  done: [position: number, n: number] | 0,
  after: [level: number, form: number, tilt: number, allowed: number, wild: 0 | 1],
];

interface WrittenSession {
  table: NotchTable;
  ladders: string[];
  caps: (number | null)[];
  turns: WrittenTurn[];
}

const FOLDER = join(import.meta.dirname, "../../../fixtures/notch-walks");
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith(".json"));

function runsIn(name: string): WrittenSession[][] {
  return (JSON.parse(readFileSync(join(FOLDER, name), "utf8")) as { runs: WrittenSession[][] })
    .runs;
}

/** "17:0102": the first index, then each step up as a digit of base 36. */
function ladderOf(text: string | undefined, cap: number | null | undefined): Ladder {
  const [first = "", steps = ""] = (text ?? "").split(":");
  const ladder = [Number(first)];
  for (const step of steps) ladder.push((ladder.at(-1) ?? 0) + Number.parseInt(step, 36));
  return { ladder, cap: cap ?? null };
}

/** Everything that the vectors say, as this walk says it. */
function replay(run: WrittenSession[]): WrittenTurn[][] {
  let before: { table: NotchTable; state: WalkState } | null = null;
  return run.map((session) => {
    const { table } = session;
    let state: WalkState = before
      ? carry(before.table, before.state, begin(before.table), table)
      : begin(table);
    const turns = session.turns.map(([, done], turn): WrittenTurn => {
      const ladder = ladderOf(session.ladders[turn], session.caps[turn]);
      const at = reckonedAt(table, Math.min(turn, table.at.length - 1));
      const { index, notch, reason } = suggest(state, table, ladder, at);
      if (done !== 0) state = walk(state, table, turn, ...done);
      const { level, form, tilt, allowed, wild } = state;
      return [[index, notch, reason], done, [level, form, tilt, allowed, wild ? 1 : 0]];
    });
    before = { table, state };
    return turns;
  });
}

const TABLE: NotchTable = {
  lift: "back-squat",
  level: 4605,
  form: 0,
  base: 441,
  drift: 2,
  kind: [0, 1, 1],
  at: [5, 8, 8],
  gain: {
    "0.0:0": [310, 120, 50],
    "0.0:1": [300, 110, -60],
    "1.0:1": [200, 80, -30],
    "0.1:1": [210, 90, -40],
    "1.1:1": [150, 60, -20],
    "1.2:1": [120, 50, -10],
  },
  missed: {},
  told: 0,
  less: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  tells: [0, 400, 700, 900],
  offset: [0, 51, 73, 105, 139, 163, 186, 223, 261, 288, 357, 400, 410, 421, 431],
  lean: [139, 88, 67, 34, 0, -23, -47, -84, -122, -148, -217, -261, -271, -281, -292],
  gate: 120,
  rise: { per_set: 2, in_all: 5 },
};

const EACH: Ladder = { ladder: Array.from({ length: 41 }, (_, notch) => notch) };

describe("the shared vectors", () => {
  test("hold more than a thousand sessions", () => {
    const sessions = FILES.flatMap(runsIn).flat();
    expect(sessions.length).toBeGreaterThan(1000);
  });

  test.each(FILES)("%s is walked as the server walks it", (name) => {
    for (const run of runsIn(name)) {
      expect(replay(run)).toStrictEqual(run.map((session) => session.turns));
    }
  });
});

describe("a step", () => {
  test("moves level, form and tilt by their gains, halves away from zero", () => {
    const after = walk(begin(TABLE), TABLE, 0, 4605 - 186 + 50, 7);
    expect([after.level - 4605, after.form, after.tilt]).toStrictEqual([16, 6, 3]);
    const down = walk(begin(TABLE), TABLE, 0, 4605 - 186 - 50, 7);
    expect([down.level - 4605, down.form, down.tilt]).toStrictEqual([-16, -6, -3]);
  });

  test("believes a difference up to the gate and marks what lies beyond", () => {
    const far = walk(begin(TABLE), TABLE, 0, 5200, 7);
    const gate = walk(begin(TABLE), TABLE, 0, 4605 - 186 + 120, 7);
    expect(far).toStrictEqual({ ...gate, wild: true });
  });

  test("reckons half a repetition between its neighbours", () => {
    expect(difference(begin(TABLE), TABLE, 4605, 6.5)).toBe(175); // (163 + 186) / 2, rounded
  });

  test("after a skipped set takes the gain of one that comes first", () => {
    const after = walk(begin(TABLE), TABLE, 1, 4605 - 223 + 100, 8);
    expect([after.level - 4605, after.done]).toStrictEqual([30, [0, 1]]);
  });

  test("moves nothing where the plan has no evidence", () => {
    const empty: NotchTable = { ...TABLE, kind: [], at: [], gain: {}, tells: [0] };
    expect(walk(begin(empty), empty, 0, 4000, 5)).toStrictEqual(begin(empty));
  });

  test("leaves the state that it was given as it was", () => {
    const state = Object.freeze(begin(TABLE));
    walk(state, TABLE, 0, 5000, 5);
    expect(state).toStrictEqual(begin(TABLE));
  });
});

describe("the next session", () => {
  test("starts with the level walked to and without form", () => {
    const state = walk(begin(TABLE), TABLE, 0, 4605 - 186 + 50, 7);
    const after = carry(TABLE, state, begin(TABLE), { ...TABLE, level: 4607 });
    expect([after.level, after.form, after.tilt]).toStrictEqual([4623, 0, 3]);
  });

  test("does not carry twice what the server knew", () => {
    const known = walk(begin(TABLE), TABLE, 0, 4605 - 186 + 50, 7);
    const state = walk(known, TABLE, 1, 4605 - 223 + 80, 8);
    const after = carry(TABLE, state, known, { ...TABLE, level: known.level });
    expect([after.level, after.told]).toStrictEqual([state.level, 300]);
  });
});

describe("a suggestion", () => {
  test("before any set is the sheet's own load", () => {
    expect(suggest(begin(TABLE), TABLE, EACH, 5)).toStrictEqual({
      index: 20,
      notch: 461,
      reason: "same",
    });
  });

  test("rises by two notches a set and five in all", () => {
    let state = begin(TABLE);
    const shown = [0, 1, 2, 3].map((turn) => {
      state = walk(state, TABLE, turn, 4605 - 139 + 400, 5);
      return suggest(state, TABLE, EACH, 5).index - 20;
    });
    expect(shown).toStrictEqual([2, 4, 5, 5]);
  });

  test("never passes the set's upper bound", () => {
    const state = { ...begin(TABLE), level: 4655, allowed: 5 };
    const found = suggest(state, TABLE, { ...EACH, cap: 22 }, 5);
    expect([found.index, found.reason]).toStrictEqual([22, "upper-bound"]);
  });

  test("is the plan itself where the coach holds it", () => {
    const state = { ...begin(TABLE), level: 4400 };
    const found = suggest(state, { ...TABLE, hold: true }, EACH, 5);
    expect([found.index, found.reason]).toStrictEqual([20, "hold"]);
  });

  test("for a set without a turn is reckoned as a share of the maximum", () => {
    expect([reckonedAt(TABLE, undefined), reckonedAt(TABLE, 1)]).toStrictEqual([1, 8]);
  });
});

describe("an outcome is evidence", () => {
  test.each([
    [5, 2, false, 7],
    [5, 1.5, false, 6.5],
    [5, null, true, 5],
    [5, 3, true, 5],
    [15, 0, false, 15],
  ])("%s reps, %s in reserve, to failure %s: n = %s", (reps, rir, toFailure, n) => {
    expect(evidenceN(reps, rir, toFailure)).toBe(n);
  });

  test.each([
    [5, null, false],
    [12, 4, false],
    [0, 2, false],
  ])("but not with %s reps, %s in reserve, to failure %s", (reps, rir, toFailure) => {
    expect(evidenceN(reps, rir, toFailure)).toBeNull();
  });
});
