import { describe, expect, it } from "vitest";

import type { Block, SetPlan } from "../../api/types";
import type { Finding, LoadCell, LoadRow } from "../answers";
import { shownTable } from "./load-table";
import { exercise, session, set } from "./samples";

/** A block of one exercise, a list of sets for each week. */
function block(...weeks: readonly SetPlan[][]): Block {
  return {
    key: "ridge",
    name: "Up the ridge",
    weeks: weeks.map((sets, at) => ({
      key: `w${at + 1}`,
      name: `Week ${at + 1}`,
      sessions: [session(`s${at}`, 1, [exercise("pull", sets)])],
    })),
  };
}

function row(...weeks: readonly Partial<LoadCell>[][]): LoadRow {
  const cells = weeks.map((sets, week) => sets.map((one, place) => cell(week, place, one)));
  const about = { day: 1, session: "Up", key: "pull", exercise: "deadlift", name: "Deadlift" };
  return { ...about, weeks: cells };
}

function cell(week: number, place: number, one: Partial<LoadCell>): LoadCell {
  const path = `weeks.${week}.sessions.0.exercises.0.sets.${place}`;
  return { path, reps: 5, kg: null, wish_kg: null, change_kg: null, why: "", ...one };
}

function rowsOf(document: Block, table: LoadRow, findings: readonly Finding[] = []) {
  return shownTable({ document, table: [table], findings })[0]?.rows ?? [];
}

function finding(severity: Finding["severity"], path: string): Finding {
  return { severity, path, check: "", where: "", what: "", right: "", may_overrule: true };
}

const SETS = [set("s1", 5, 70), set("s2", 5, 70), set("s3", 5, 60)];

describe("rows of the table of loads", () => {
  it("join sets that are alike in every week", () => {
    const loads = row([{ kg: 70 }, { kg: 70 }, { kg: 60 }], [{ kg: 75 }, { kg: 75 }, { kg: 65 }]);
    expect(rowsOf(block(SETS, SETS), loads).map((each) => each.sets)).toEqual([
      "Sets 1–2",
      "Set 3",
    ]);
  });

  it("part sets where one week has more of them", () => {
    const document = block(SETS.slice(0, 1), SETS.slice(0, 2));
    const rows = rowsOf(document, row([{ kg: 70 }], [{ kg: 70 }, { kg: 70 }]));
    expect(rows.map((each) => each.sets)).toEqual(["Set 1", "Set 2"]);
    expect(rows[1]?.cells[0]).toBeNull();
  });
});

describe("a cell of the table of loads", () => {
  it("reads as kilograms with what is asked", () => {
    const [first] = rowsOf(block([{ ...set("s1", 5, 72.5), rir: 2 }]), row([{ kg: 102.5 }]));
    expect(first?.cells[0]).toMatchObject({ load: "102.5 kg", asks: "5 reps · 72.5 % · 2 RIR" });
  });

  it("tells what is not as in the week before", () => {
    const document = block([set("s1", 8, 70)], [set("s1", 9, 70)], [set("s1", 9, 70)]);
    const loads = row([{ kg: 70 }], [{ kg: 70, change_kg: 0 }], [{ kg: 72.5, change_kg: 2.5 }]);
    const cells = rowsOf(document, loads)[0]?.cells ?? [];
    expect(cells.map((each) => each?.changed)).toEqual([
      { load: false, asks: false },
      { load: false, asks: true },
      { load: true, asks: false },
    ]);
    expect(cells.map((each) => each?.change)).toEqual(["", "", "+2.5 kg"]);
  });

  it("has the wish in words where there is no load", () => {
    const byFeel: SetPlan = { key: "s1", reps: 5, load: { basis: "rir", rir: 2 } };
    expect(rowsOf(block([byFeel]), row([{}]))[0]?.cells[0]?.load).toBe("with 2 in reserve");
  });

  it("says that there is no load where none could be worked out", () => {
    const path = "weeks.0.sessions.0.exercises.0";
    const [first] = rowsOf(block([set("s1", 5, 70)]), row([{}]), [finding("stop", path)]);
    expect(first?.cells[0]).toMatchObject({ load: "no load", asks: "5 reps · 70 %", mark: "stop" });
  });

  it("is marked by the gravest finding of its set or its exercise, and by no note", () => {
    const path = "weeks.0.sessions.0.exercises.0";
    const marks = (...findings: Finding[]) =>
      rowsOf(block(SETS.slice(0, 2)), row([{ kg: 70 }, { kg: 70 }]), findings).map(
        (each) => each.cells[0]?.mark,
      );
    expect(marks(finding("warn", `${path}.sets.1`))).toEqual([null, "warn"]);
    expect(marks(finding("warn", `${path}.sets.0`), finding("stop", path))).toEqual(["stop"]);
    expect(marks(finding("note", path), finding("stop", `${path}0`))).toEqual([null]);
  });
});
