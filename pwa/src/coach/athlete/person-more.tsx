import type { Athlete } from "../../api/types";
import type { Column } from "../rows/columns";
import type { DocumentForm } from "../rows/document-form";
import { RowsEditor } from "../rows/rows-editor";
import { within } from "../block/faults";

type RangeRow = NonNullable<Athlete["ranges"]>[number];
type LeanRow = NonNullable<Athlete["leans"]>[number];
type InjuryRow = NonNullable<Athlete["injuries"]>[number];

const RANGES: readonly Column<RangeRow>[] = [
  { kind: "exercise", field: "exercise", label: "Exercise", width: "w20" },
  {
    kind: "number",
    field: "start_height_m",
    label: "Hands, or what a band holds, start at",
    unit: "cm",
    scale: 100,
  },
  { kind: "number", field: "range_m", label: "and travel", unit: "cm", scale: 100 },
];

const LEANS: readonly Column<LeanRow>[] = [
  { kind: "exercise", field: "lift", label: "Lift", width: "w20" },
  { kind: "number", field: "ratio", label: "Share of the other", unit: "%", scale: 100 },
  { kind: "exercise", field: "on_lift", label: "Leans on", width: "w20" },
];

const INJURIES: readonly Column<InjuryRow>[] = [
  { kind: "text", field: "where", label: "Where", width: "w12" },
  { kind: "text", field: "note", label: "Note", width: "w20" },
  { kind: "exercises", field: "avoid", label: "Exercises to avoid", width: "w20" },
];

/** What only some athletes need; closed until it holds something or is at fault. */
export function PersonMore({ form }: { readonly form: DocumentForm<Athlete> }) {
  const { document, faults, change } = form;
  const open = (list: string, rows: readonly unknown[] | undefined) =>
    (rows?.length ?? 0) > 0 || within(faults, list).length > 0;
  return (
    <>
      <details open={open("injuries", document.injuries)}>
        <summary>Injuries</summary>
        <RowsEditor<InjuryRow>
          list="injuries"
          one="injury"
          rows={document.injuries ?? []}
          columns={INJURIES}
          blank={() => ({ where: "" })}
          faults={faults}
          onRows={(injuries) => change({ injuries })}
        />
      </details>
      <details open={open("ranges", document.ranges)}>
        <summary>Tape readings of a lift</summary>
        <RowsEditor<RangeRow>
          list="ranges"
          one="reading"
          rows={document.ranges ?? []}
          columns={RANGES}
          blank={() => ({}) as RangeRow}
          faults={faults}
          onRows={(ranges) => change({ ranges })}
        />
      </details>
      <details open={open("leans", document.leans)}>
        <summary>Lifts that lean on another lift’s maximum</summary>
        <RowsEditor<LeanRow>
          list="leans"
          one="lean"
          rows={document.leans ?? []}
          columns={LEANS}
          blank={() => ({}) as LeanRow}
          faults={faults}
          onRows={(leans) => change({ leans })}
        />
      </details>
    </>
  );
}
