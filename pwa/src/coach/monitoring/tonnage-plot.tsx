import type { WorkWeek } from "../answers";
import { figure } from "../block/wish-words";
import { tableAddress } from "../desk";
import { BarPlot } from "../plots/bar-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { Plotted } from "../plots/plotted";
import { counted } from "../shell/counted";
import { calendarDate, dayAndMonth } from "../shell/when";
import { tenths } from "./words";
import type { WorkSeen } from "./work-sections";

const COLUMNS: readonly [Column<WorkWeek>, ...Column<WorkWeek>[]] = [
  { head: "Week of", cell: (week) => calendarDate(week.monday) },
  { head: "Tonnage, kg", cell: (week) => tenths(week.tonnage_kg) },
  { head: "Repetitions", cell: (week) => figure(week.reps) },
  {
    head: "Mean of a repetition, kg",
    cell: (week) => (week.mean_resistance_kg === null ? "—" : tenths(week.mean_resistance_kg)),
  },
  { head: "Sets left out", cell: (week) => figure(week.left_out_sets) },
];

/** Repetitions times mean resistance, by week. */
export function TonnagePlot({ id, weeks, found }: WorkSeen) {
  const leftOut = found.reduce((sum, week) => sum + week.left_out_sets, 0);
  const last = found.at(-1);
  return (
    <Plotted
      title="Tonnage of each week"
      csv={tableAddress(id, "tonnage", weeks)}
      table={
        <NumberTable
          caption="Tonnage of each week"
          rows={found.toReversed()}
          keyOf={(week) => week.monday}
          columns={COLUMNS}
        />
      }
    >
      {found.every((week) => week.reps === 0) ? (
        <p class="lead">No repetition was done with a known load.</p>
      ) : (
        <BarPlot
          label={`Tonnage of each week in tonnes; this week so far ${inTonnes(last?.tonnage_kg ?? 0)}.`}
          unit="tonnes, by week from Monday"
          bars={found.map((week) => ({
            key: week.monday,
            name: dayAndMonth(week.monday),
            parts: [week.tonnage_kg / 1000],
          }))}
        />
      )}
      <p class="aside-note">
        Repetitions times the mean resistance over the range: bands and chains count at their mean.
        {leftOut > 0 &&
          ` ${counted(leftOut, "set")} without a load or repetitions, such as holds and own body, ${
            leftOut === 1 ? "is" : "are"
          } left out.`}
      </p>
    </Plotted>
  );
}

function inTonnes(kg: number): string {
  return `${tenths(kg / 1000)} t`;
}
