import type { Condition } from "../answers";
import { kilos } from "../block/wish-words";
import { tableAddress } from "../desk";
import { dayAt, dayMarks } from "../plots/day-marks";
import { LinePlot, type Series } from "../plots/line-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { ticks } from "../plots/plot-scale";
import { Plotted } from "../plots/plotted";
import { calendarDate } from "../shell/when";
import type { ConditionSeen } from "./condition-section";

type Mass = Condition["body_masses"][number];

const COLUMNS: readonly [Column<Mass>, ...Column<Mass>[]] = [
  { head: "On", cell: (one) => calendarDate(one.on) },
  { head: "Body mass, kg", cell: (one) => kilos(one.kg) },
];

/** Body mass over the days. */
export function MassPlot({ found, id, weeks }: ConditionSeen) {
  const { body_masses: masses, first, last } = found;
  const [earliest, latest] = [masses[0], masses.at(-1)];
  if (!earliest || !latest) return <p>No body mass was reported in these weeks.</p>;
  const points = masses.map((one) => ({ x: dayAt(one.on), y: one.kg }));
  const kilograms = points.map((point) => point.y);
  const series: Series[] = [
    { name: "between reports", look: "solid", points },
    { name: "body mass", look: "dots", points },
  ];
  return (
    <Plotted
      title="Body mass"
      csv={tableAddress(id, "body-mass", weeks)}
      table={
        <NumberTable
          caption="Body mass as it was reported"
          rows={masses.toReversed()}
          keyOf={(one) => `${masses.indexOf(one)}`}
          columns={COLUMNS}
        />
      }
    >
      <LinePlot
        label={`Body mass from ${kilos(earliest.kg)} kg to ${kilos(latest.kg)} kg`}
        unit="kg; the axis does not begin at 0"
        height={190}
        series={series}
        values={ticks(Math.min(...kilograms) - 0.5, Math.max(...kilograms) + 0.5, 5)}
        between={[dayAt(first), dayAt(last)]}
        marksAt={dayMarks(first, last)}
      />
    </Plotted>
  );
}
