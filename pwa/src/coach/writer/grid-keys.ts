/** Moving about in a table of buttons by the arrow keys, so that it is one stop for the tab key. */

const STEPS: Readonly<Record<string, readonly [rows: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** The button that an arrow key leads to from the focused one; null where it leads nowhere. */
export function neighbour(table: HTMLTableElement | null, key: string): HTMLElement | null {
  const step = STEPS[key];
  const cell = document.activeElement?.closest("td, th");
  const row = cell?.parentElement;
  if (
    !table ||
    !step ||
    !(cell instanceof HTMLTableCellElement) ||
    !(row instanceof HTMLTableRowElement)
  ) {
    return null;
  }
  const [down, across] = step;
  const to = table.rows[row.rowIndex + down];
  const last = (to?.cells.length ?? 0) - 1;
  const target = to?.cells[down === 0 ? cell.cellIndex + across : Math.min(cell.cellIndex, last)];
  return target?.querySelector<HTMLElement>("button") ?? null;
}
