import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";

interface PlottedProps {
  readonly title: string;
  /** The address of the same numbers as a CSV file. */
  readonly csv: string;
  readonly table: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A plot under its title, with the same numbers as a table and as a file. */
export function Plotted({ title, csv, table, children }: PlottedProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  return (
    <div class="plotted" role="group" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>{title}</h3>
      {children}
      <p class="plot-ways">
        <button
          type="button"
          aria-expanded={open}
          aria-controls={`${id}-table`}
          aria-label={`Table: ${title}`}
          onClick={() => setOpen(!open)}
        >
          Table
        </button>{" "}
        <a class="button" href={csv} download aria-label={`CSV: ${title}`}>
          CSV
        </a>
      </p>
      <div id={`${id}-table`} hidden={!open}>
        {open && table}
      </div>
    </div>
  );
}
