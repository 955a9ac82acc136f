/** The table of loads as it is read: weeks across, sets down, sets that are alike in one row. */
import type { Block, SetPlan } from "../../api/types";
import type { Finding, LoadCell, LoadRow, UnfoldAnswer } from "../answers";
import { contentInWords, figure, kilos, wishInWords } from "./wish-words";

export interface ShownCell {
  /** "102.5 kg", or in words what stands in a load's place. */
  readonly load: string;
  /** What is asked: "5 reps · 75 %". */
  readonly asks: string;
  /** "+2.5 kg" against the week before; nothing where the load stays. */
  readonly change: string;
  /** What is not as in the week before, where that has this set too. */
  readonly changed: { readonly load: boolean; readonly asks: boolean };
  /** Why there is no load, or what is to be looked at, as a word. */
  readonly mark: Finding["severity"] | null;
}

interface ShownRow {
  /** "Set 1", "Sets 1–3". */
  readonly sets: string;
  /** One for each week; null where the week has no such set. */
  readonly cells: readonly (ShownCell | null)[];
}

export interface ShownExercise {
  readonly row: LoadRow;
  readonly rows: readonly ShownRow[];
}

export type Unfolded = Pick<UnfoldAnswer, "table" | "findings"> & { readonly document: Block };

export function shownTable({ table, findings, document }: Unfolded): ShownExercise[] {
  const looking = findings.filter((each) => each.severity !== "note");
  return table.map((row) => ({ row, rows: merged(setRows(row, document, looking)) }));
}

function setRows(row: LoadRow, document: Block, findings: readonly Finding[]): ShownCells[] {
  const most = Math.max(...row.weeks.map((cells) => cells.length));
  return Array.from({ length: most }, (_, set) => {
    const shown = row.weeks.map((cells) => shownCell(cells[set], document, findings));
    return shown.map((cell, week) => cell && compared(cell, shown[week - 1] ?? null));
  });
}

type ShownCells = readonly (ShownCell | null)[];

function shownCell(
  cell: LoadCell | undefined,
  document: Block,
  findings: readonly Finding[],
): ShownCell | null {
  const set = cell && setAt(document, cell.path);
  if (!cell || !set) return null;
  const mark = markOf(cell, findings);
  const none = mark === "stop" ? "no load" : wishInWords(set.load);
  return {
    load: cell.kg === null ? none : `${kilos(cell.kg)} kg`,
    asks: asksInWords(set, cell.kg !== null || mark === "stop"),
    change: changeInWords(cell.change_kg ?? 0),
    changed: { load: false, asks: false },
    mark,
  };
}

function changeInWords(kg: number): string {
  if (kg === 0) return "";
  return kg > 0 ? `+${kilos(kg)} kg` : `${kilos(kg)} kg`;
}

function compared(cell: ShownCell, before: ShownCell | null): ShownCell {
  if (!before) return cell;
  const changed = { load: cell.load !== before.load, asks: cell.asks !== before.asks };
  return { ...cell, changed };
}

function asksInWords(set: SetPlan, withPercent: boolean): string {
  const content = contentInWords(set);
  const parts = [
    set.reps && !set.blocks?.length ? `${content} reps` : content,
    withPercent && set.load.basis === "percent" ? `${figure(set.load.percent)} %` : "",
    set.rir === undefined ? "" : `${figure(set.rir)} RIR`,
  ];
  return parts.filter(Boolean).join(" · ");
}

/** The gravest finding of the set, or of its whole exercise. */
function markOf({ path }: LoadCell, findings: readonly Finding[]): Finding["severity"] | null {
  const exercise = path.replace(/\.sets\.\d+$/, "");
  const ours = findings.filter(
    (each) => each.path === exercise || each.path === path || each.path.startsWith(`${path}.`),
  );
  if (ours.some((each) => each.severity === "stop")) return "stop";
  return ours.length > 0 ? "warn" : null;
}

/** Rows that follow each other and read the same in every week are one. */
function merged(rows: readonly ShownCells[]): ShownRow[] {
  const told: { first: number; last: number; cells: ShownCells }[] = [];
  for (const [place, cells] of rows.entries()) {
    const before = told.at(-1);
    if (before && JSON.stringify(before.cells) === JSON.stringify(cells)) before.last = place + 1;
    else told.push({ first: place + 1, last: place + 1, cells });
  }
  return told.map(({ first, last, cells }) => ({
    sets: first === last ? `Set ${first}` : `Sets ${first}–${last}`,
    cells,
  }));
}

function setAt(document: Block, path: string): SetPlan | undefined {
  const [week, session, exercise, set] = path
    .split(".")
    .filter((_, place) => place % 2 === 1)
    .map(Number);
  const plan = document.weeks[week ?? -1]?.sessions[session ?? -1]?.exercises[exercise ?? -1];
  return plan?.sets[set ?? -1];
}
