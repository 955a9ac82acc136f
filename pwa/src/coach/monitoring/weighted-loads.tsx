import type { LoadDay, LoadSeen } from "../answers";
import { figure, signed } from "../block/wish-words";
import { tableAddress } from "../desk";
import { dayAt, dayMarks } from "../plots/day-marks";
import { Legend } from "../plots/legend";
import { LinePlot, type Series } from "../plots/line-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { ticks } from "../plots/plot-scale";
import { Plotted } from "../plots/plotted";
import { calendarDate } from "../shell/when";
import type { Asked } from "./monitoring-part";
import { changeInWords, tenths } from "./words";

const COLUMNS: readonly [Column<LoadDay>, ...Column<LoadDay>[]] = [
  { head: "On", cell: (day) => calendarDate(day.on) },
  { head: "Load, au", cell: (day) => figure(day.load_au) },
  { head: "7 days, au", cell: (day) => tenths(day.weighted_7_days_au) },
  { head: "28 days, au", cell: (day) => tenths(day.weighted_28_days_au) },
  { head: "Difference, au", cell: (day) => signed(Math.round(day.difference_au * 10) / 10) },
  { head: "Change", cell: changeInWords },
];

/** The load weighted over a week and over four, side by side, and how far apart they are. */
export function WeightedLoads({ seen, id, weeks }: Asked & { readonly seen: LoadSeen }) {
  const { days } = seen;
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return null;
  const series = seriesOf(days);
  const most = Math.max(...series.flatMap((one) => one.points.map((point) => point.y)));
  return (
    <Plotted
      title="Weighted load of each day"
      csv={tableAddress(id, "days", weeks)}
      table={
        <NumberTable
          caption="Weighted load of each day"
          rows={days.toReversed()}
          keyOf={(day) => day.on}
          columns={COLUMNS}
        />
      }
    >
      <Legend items={series} />
      <LinePlot
        label={`Weighted load of each day in arbitrary units. ${standing(last)}`}
        unit="au a day"
        series={series}
        values={ticks(0, Math.max(1, most), 5)}
        between={[dayAt(first.on), dayAt(last.on)]}
        marksAt={dayMarks(first.on, last.on)}
      />
      <p>{standing(last)}</p>
      {!last.settled && (
        <p class="aside-note">
          Less than 28 days lie behind them, so they still lean on the first session’s load.
        </p>
      )}
      <p class="aside-note">
        Each day’s load fades over 7 or 28 days (weights of 2/(N + 1)). {seen.caution}
      </p>
    </Plotted>
  );
}

function seriesOf(days: readonly LoadDay[]): readonly [Series, Series] {
  return [
    {
      name: "over 7 days",
      look: "solid",
      points: days.map((day) => ({ x: dayAt(day.on), y: day.weighted_7_days_au })),
    },
    {
      name: "over 28 days",
      look: "dashed",
      points: days.map((day) => ({ x: dayAt(day.on), y: day.weighted_28_days_au })),
    },
  ];
}

/** "On 3 Feb 2026: 310 au over 7 days, 280 au over 28 days; a change of +11 %", where there is one. */
function standing(day: LoadDay): string {
  const short = `${tenths(day.weighted_7_days_au)} au over 7 days`;
  const long = `${tenths(day.weighted_28_days_au)} au over 28 days`;
  const change = day.change_percent === null ? "" : `; a change of ${changeInWords(day)}`;
  return `On ${calendarDate(day.on)}: ${short}, ${long}${change}.`;
}
