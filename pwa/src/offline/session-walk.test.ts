// @vitest-environment node
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import { newDraft } from "../../tests/fakes/phone";
import type { LoadSheet, SheetExercise, SheetSet } from "../api/types";
import type { Placed } from "./ledger-view";
import type { NotchTable, Suggestion } from "./notches";
import { advise, type Begun } from "./session-walk";

/** One session of the shared vectors: what was shown before each turn, and what was done then. */
interface WrittenSession {
  readonly table: NotchTable;
  readonly ladders: string[];
  readonly caps: (number | null)[];
  readonly turns: [
    [index: number, notch: number, reason: Suggestion["reason"]],
    [position: number, n: number] | 0,
    unknown,
  ][];
}

const FOLDER = join(import.meta.dirname, "../../../fixtures/notch-walks");

const RUNS = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .flatMap((name) => {
    const text = readFileSync(join(FOLDER, name), "utf8");
    return (JSON.parse(text) as { runs: WrittenSession[][] }).runs.slice(0, 25);
  });

/** "17:0102": the first index, then each step up as a digit of base 36. */
function ladderOf(text = ""): number[] {
  const [first = "", steps = ""] = text.split(":");
  const ladder = [Number(first)];
  for (const step of steps) ladder.push((ladder.at(-1) ?? 0) + Number.parseInt(step, 36));
  return ladder;
}

/** A load that only one turn can have been done with. */
function kgOf(turn: number): number {
  return 10_000 + turn;
}

function exerciseOf(written: WrittenSession): SheetExercise {
  const shelf = Array.from({ length: 200 }, (_, index) => ({ kg: index, position: 0 }));
  const done = written.turns.map(([, told], turn) => ({
    kg: kgOf(turn),
    position: told === 0 ? 0 : told[0],
  }));
  return {
    key: "a",
    exercise: written.table.lift,
    name: "A lift",
    method: "straight",
    implement: { kind: "straight-bar", name: "Bar" },
    loads: [...shelf, ...done],
    notches: written.table as unknown as NonNullable<SheetExercise["notches"]>,
    sets: written.turns.map((_, turn): SheetSet => {
      const cap = written.caps[turn] ?? null;
      return {
        key: `a-${turn}`,
        number: turn + 1,
        target: {},
        ladder: ladderOf(written.ladders[turn]),
        turn,
        ...(cap !== null && { cap }),
      };
    }),
  };
}

function sheetOf(written: WrittenSession, key: string, through = 0): LoadSheet {
  const head = { name: "", week: "w1", week_name: "", day: 1, athlete: "", kit: "" };
  const exercises = [exerciseOf(written)];
  return { ...head, session: key, minutes: 1, needs: [], revision: 1, through, exercises };
}

function entryOf(written: WrittenSession, session: string, turn: number): Placed[] {
  const told = written.turns[turn]?.[1] ?? 0;
  if (told === 0) return [];
  const reps = Math.max(1, Math.floor(told[1]) - 1);
  const body = { load_kg: kgOf(turn), reps, rir: told[1] - reps };
  const place = { revision: 1, session, set: `a-${turn}` };
  return [{ entry: newDraft("set.done", body, place), position: null }];
}

function entriesOf(written: WrittenSession, session: string, before = 100): Placed[] {
  const turns = written.turns.slice(0, before);
  return turns.flatMap((_, turn) => entryOf(written, session, turn)).toReversed();
}

/** What is advised before each turn of the last session, the others being wholly unknown there. */
function advised(run: readonly WrittenSession[]): unknown[] {
  const written = run.at(-1);
  if (!written) return [];
  const earlier = run.slice(0, -1).map((one, index): Begun => {
    const key = `s${index}`;
    return { sheet: sheetOf(one, key), entries: entriesOf(one, key) };
  });
  const sheet = sheetOf(written, "now");
  const [exercise] = sheet.exercises;
  return (exercise?.sets ?? []).map((set, turn) => {
    const session = { sheet, entries: entriesOf(written, "now", turn) };
    const advice = exercise && advise(exercise, set, earlier, session);
    const { index, notch, reason } = advice?.suggestion ?? {};
    return [index, notch, reason];
  });
}

describe("the walk over a session's entries", () => {
  test("suggests what the shared vectors say, through sessions that the server does not know", () => {
    expect(RUNS.length).toBeGreaterThan(100);
    for (const run of RUNS) {
      for (let last = 1; last <= run.length; last += 1) {
        const shown = run[last - 1]?.turns.map(([suggestion]) => suggestion);
        expect(advised(run.slice(0, last))).toStrictEqual(shown);
      }
    }
  });
});

describe("what the server knew when it made the sheet", () => {
  const run = RUNS.find((each) => each.length > 2 && each[0] && entriesOf(each[0], "s").length > 1);
  if (!run?.[0] || !run[1]) throw new Error("the vectors hold a run of three sessions");
  const [first, second] = run;
  const positioned = entriesOf(first, "s0").map((each, index) => ({
    ...each,
    position: index + 1,
  }));

  function startingAdvice(through: number, entries: readonly Placed[]): unknown {
    const sheet = sheetOf(second, "now", through);
    const [exercise] = sheet.exercises;
    const [set] = exercise?.sets ?? [];
    if (!exercise || !set) return null;
    const earlier = [{ sheet: sheetOf(first, "s0"), entries }];
    return advise(exercise, set, earlier, { sheet, entries: [] });
  }

  test("is not counted again", () => {
    const alone = startingAdvice(0, []);
    expect(startingAdvice(positioned.length, positioned)).toStrictEqual(alone);
  });

  test("and what came later is", () => {
    const unknown = positioned.map((each) => ({ ...each, position: null }));
    expect(startingAdvice(0, positioned)).toStrictEqual(startingAdvice(0, unknown));
  });
});

describe("no suggestion", () => {
  const written = RUNS[0]?.[0];
  if (!written) throw new Error("the vectors hold a session");
  const sheet = sheetOf(written, "now");
  const [exercise] = sheet.exercises;
  const [set] = exercise?.sets ?? [];
  if (!exercise || !set) throw new Error("the session has a set");
  const session = { sheet, entries: [] };

  test("for an exercise without a table, as after a swap", () => {
    const { notches: _, ...swapped } = exercise;
    expect(advise(swapped, set, [], session)).toBeNull();
  });

  test("for a set without a ladder", () => {
    const { ladder: _, ...bare } = set;
    expect(advise(exercise, bare, [], session)).toBeNull();
  });
});
