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

type Readiness = Condition["readiness"][number];

const COLUMNS: readonly [Column<Readiness>, ...Column<Readiness>[]] = [
  { head: "On", cell: (one) => calendarDate(one.on) },
  { head: "Readiness, 1–5", cell: (one) => figure(one.score) },
  { head: "Comment", cell: (one) => one.comment ?? "", words: true },
];

/** How ready the athlete felt. */
export function ReadinessPlot({ found, id, weeks }: ConditionSeen) {
  const { readiness, first, last } = found;
  if (readiness.length === 0) return <p>No readiness was reported in these weeks.</p>;
  return (
    <Plotted
      title="Readiness"
      csv={tableAddress(id, "readiness", weeks)}
      table={
        <NumberTable
          caption="Readiness as it was reported"
          rows={readiness.toReversed()}
          keyOf={(one) => `${readiness.indexOf(one)}`}
          columns={COLUMNS}
        />
      }
    >
      <LinePlot
        label={`Readiness from 1 to 5, 5 the best: ${counted(readiness.length, "report")}`}
        unit="1–5, 5 the best"
        height={170}
        series={[
          {
            name: "readiness",
            look: "dots",
            points: readiness.map((one) => ({ x: dayAt(one.on), y: one.score })),
          },
        ]}
        values={[1, 2, 3, 4, 5]}
        between={[dayAt(first), dayAt(last)]}
        marksAt={dayMarks(first, last)}
      />
    </Plotted>
  );
}
