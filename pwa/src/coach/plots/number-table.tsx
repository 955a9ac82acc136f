import type { ComponentChildren } from "preact";

export interface Column<Row> {
  /** With its unit. */
  readonly head: string;
  readonly cell: (row: Row) => ComponentChildren;
  readonly words?: boolean;
}

interface NumberTableProps<Row> {
  readonly caption: string;
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  /** The first one names the row. */
  readonly columns: readonly [Column<Row>, ...Column<Row>[]];
}

/** A table of numbers; on a phone each row is a short list of its own. */
export function NumberTable<Row>({ caption, rows, keyOf, columns }: NumberTableProps<Row>) {
  const [first, ...others] = columns;
  return (
    <table class="ruled figures">
      <caption class="sr-only">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{first.head}</th>
          {others.map((column) => (
            <th key={column.head} scope="col" class={column.words ? undefined : "number"}>
              {column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={keyOf(row)}>
            <th scope="row">{first.cell(row)}</th>
            {others.map((column) => (
              <td
                key={column.head}
                class={column.words ? undefined : "number"}
                data-head={column.head}
              >
                {column.cell(row)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
