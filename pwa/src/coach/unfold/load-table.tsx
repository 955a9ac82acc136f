import { useMemo } from "preact/hooks";

import { shownTable, type ShownCell, type ShownExercise, type Unfolded } from "../block/load-table";
import { SEVERITY_WORDS, SeverityMark } from "../findings/severity-mark";
import { dayName } from "../shell/when";

interface LoadTableProps {
  readonly unfolded: Unfolded & { readonly weeks: readonly number[] };
  /** Worked out from older choices. */
  readonly stale: boolean;
}

/** Weeks across, sets down; it scrolls within itself where the screen is narrow. */
export function LoadTable({ unfolded, stale }: LoadTableProps) {
  const exercises = useMemo(() => shownTable(unfolded), [unfolded]);
  const names = unfolded.weeks.map((place) => unfolded.document.weeks[place]?.name ?? "");
  return (
    // What scrolls has to be reached by keys.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <div class="load-table-frame" role="region" aria-label="Loads by week" tabIndex={0}>
      <table class={`load-table${stale ? " stale" : ""}`}>
        <caption class="sr-only">Loads by week and set</caption>
        <thead>
          <tr>
            <th scope="col">
              <span class="sr-only">Sets</span>
            </th>
            {names.map((name, place) => (
              <th key={unfolded.weeks[place]} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        {exercises.map((exercise) => (
          <ExerciseRows
            key={`${exercise.row.day} ${exercise.row.session} ${exercise.row.key}`}
            exercise={exercise}
            columns={names.length}
          />
        ))}
      </table>
    </div>
  );
}

interface ExerciseRowsProps {
  readonly exercise: ShownExercise;
  readonly columns: number;
}

function ExerciseRows({ exercise: { row, rows }, columns }: ExerciseRowsProps) {
  return (
    <tbody>
      <tr class="load-table-name">
        <th scope="rowgroup" colSpan={columns + 1}>
          <span>
            {row.name} <span class="soft">{dayName(row.day)}</span>
          </span>
        </th>
      </tr>
      {rows.map(({ sets, cells }) => (
        <tr key={sets}>
          <th scope="row">{sets}</th>
          {cells.map((cell, place) => (
            // The columns are the weeks, in their order.
            // oxlint-disable-next-line no-array-index-key
            <td key={place}>{cell ? <Cell cell={cell} /> : <NoSet />}</td>
          ))}
        </tr>
      ))}
    </tbody>
  );
}

function NoSet() {
  return (
    <span class="soft">
      <span aria-hidden="true">–</span>
      <span class="sr-only">no such set</span>
    </span>
  );
}

function Cell({ cell }: { readonly cell: ShownCell }) {
  const { load, asks, change, changed, mark } = cell;
  return (
    <span class="cell">
      <span class={changed.load ? "cell-load changed" : "cell-load"}>
        {load}
        {change && <span class="cell-change"> {change}</span>}
      </span>
      <span class={changed.asks ? "cell-asks changed" : "cell-asks"}>{asks}</span>
      {mark && (
        <span class={`cell-mark ${mark}`}>
          <SeverityMark severity={mark} />
          {SEVERITY_WORDS[mark]}
        </span>
      )}
    </span>
  );
}
