import { useRef } from "preact/hooks";

import type { Fault } from "../../api/client";
import { within } from "../block/faults";
import { replaced, without } from "../block/lists";
import { FaultList } from "../shell/states";
import { Cell } from "./cell";
import type { Column } from "./columns";

interface RowsEditorProps<T extends object> {
  /** The name of the list in the document, as in the paths of faults. */
  readonly list: string;
  /** What one row is, "bar". */
  readonly one: string;
  readonly rows: readonly T[];
  readonly columns: readonly Column<T>[];
  readonly blank: () => T;
  readonly faults: readonly Fault[];
  readonly onRows: (rows: T[]) => void;
}

/** A table of rows to add to, change and remove from. */
export function RowsEditor<T extends object>(props: RowsEditorProps<T>) {
  const { list, one, rows, columns, blank, faults, onRows } = props;
  const body = useRef<HTMLTableSectionElement>(null);
  const add = () => {
    onRows([...rows, blank()]);
    setTimeout(() =>
      body.current
        ?.querySelector<HTMLElement>("tr:last-child input, tr:last-child select")
        ?.focus(),
    );
  };
  return (
    <div class="rows-editor">
      {rows.length > 0 && (
        <table class="ruled rows">
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.field} scope="col">
                  {column.label}
                </th>
              ))}
              <th scope="col">
                <span class="sr-only">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody ref={body}>
            {rows.map((row, place) => (
              <Row
                key={"key" in row ? String(row.key) : place}
                row={row}
                name={`${one} ${place + 1}`}
                columns={columns}
                faults={within(faults, `${list}.${place}`)}
                path={`${list}.${place}`}
                onRow={(next) => onRows(replaced(rows, place, next))}
                onRemove={() => onRows(without(rows, place))}
              />
            ))}
          </tbody>
        </table>
      )}
      <FaultList faults={faults.filter((fault) => fault.path === list)} />
      <button type="button" onClick={add}>
        Add {/^[aeiou]/.test(one) ? "an" : "a"} {one}
      </button>
    </div>
  );
}

interface RowProps<T> {
  readonly row: T;
  readonly name: string;
  readonly columns: readonly Column<T>[];
  readonly faults: readonly Fault[];
  readonly path: string;
  readonly onRow: (row: T) => void;
  readonly onRemove: () => void;
}

function Row<T extends object>({ row, name, columns, faults, path, onRow, onRemove }: RowProps<T>) {
  const shown = columns.map((column) => `${path}.${column.field}`);
  const others = faults.filter(
    (fault) => !shown.some((field) => within([fault], field).length > 0),
  );
  return (
    <tr>
      {columns.map((column) => (
        <td key={column.field} data-head={column.label}>
          <Cell
            column={column}
            label={`${column.label} of ${name}`}
            value={row[column.field]}
            faults={within(faults, `${path}.${column.field}`)}
            onValue={(value) => onRow({ ...row, [column.field]: value })}
          />
        </td>
      ))}
      <td class="row-end">
        <button type="button" class="plain" aria-label={`Remove ${name}`} onClick={onRemove}>
          Remove
        </button>
        <FaultList faults={others} />
      </td>
    </tr>
  );
}
