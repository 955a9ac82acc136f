interface ColumnHeadsProps {
  readonly names: readonly string[];
  /** What the buttons of a last column do: its head is heard and not seen. */
  readonly deed?: string;
}

/** The head of a table whose columns hold words. */
export function ColumnHeads({ names, deed }: ColumnHeadsProps) {
  return (
    <thead>
      <tr>
        {names.map((name) => (
          <th key={name} scope="col">
            {name}
          </th>
        ))}
        {deed !== undefined && (
          <th scope="col">
            <span class="sr-only">{deed}</span>
          </th>
        )}
      </tr>
    </thead>
  );
}
