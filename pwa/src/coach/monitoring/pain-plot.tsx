import type { Condition } from "../answers";
import { figure } from "../block/wish-words";
import { tableAddress } from "../desk";
import { dayAt, dayMarks } from "../plots/day-marks";
import { LinePlot } from "../plots/line-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { Plotted } from "../plots/plotted";
import { counted } from "../shell/counted";
import { calendarDate } from "../shell/when";
import type { ConditionSeen } from "./condition-section";

type Pain = Condition["pains"][number];

const COLUMNS: readonly [Column<Pain>, ...Column<Pain>[]] = [
  { head: "On", cell: (pain) => calendarDate(pain.on) },
  { head: "Level, 0–10", cell: (pain) => figure(pain.level) },
  { head: "Where", cell: (pain) => pain.where, words: true },
  { head: "Comment", cell: (pain) => pain.comment ?? "", words: true },
];

/** Pain on a line of days. */
export function PainPlot({ found, id, weeks }: ConditionSeen) {
  const { pains, first, last } = found;
  if (pains.length === 0) return <p>No pain was reported in these weeks.</p>;
  const places = [...new Set(pains.map((pain) => pain.where))].join(", ");
  return (
    <Plotted
      title="Pain"
      csv={tableAddress(id, "pain", weeks)}
      table={
        <NumberTable
          caption="Pain as it was reported"
          rows={pains.toReversed()}
          keyOf={(pain) => `${pains.indexOf(pain)}`}
          columns={COLUMNS}
        />
      }
    >
      <LinePlot
        label={`Pain from 0 to 10: ${counted(pains.length, "report")}, ${places}`}
        unit="level, 0–10"
        series={[
          {
            name: "pain",
            look: "dots",
            points: pains.map((pain) => ({ x: dayAt(pain.on), y: pain.level })),
          },
        ]}
        values={[0, 2, 4, 6, 8, 10]}
        between={[dayAt(first), dayAt(last)]}
        marksAt={dayMarks(first, last)}
      />
      <p>
        {counted(pains.length, "report")}: {places}.
      </p>
    </Plotted>
  );
}
