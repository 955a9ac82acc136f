import type { SpeedSession } from "../answers";
import { tableAddress } from "../desk";
import { dayAt, dayMarks } from "../plots/day-marks";
import { LinePlot, type Series } from "../plots/line-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { ticks } from "../plots/plot-scale";
import { Plotted } from "../plots/plotted";
import { calendarDate } from "../shell/when";
import type { SpeedSeen } from "./speed-section";
import { percent, watts } from "./speed-words";

type Measured = SpeedSession & { readonly course: NonNullable<SpeedSession["course"]> };

const COLUMNS: readonly [Column<Measured>, ...Column<Measured>[]] = [
  { head: "On", cell: (one) => calendarDate(one.on) },
  { head: "Best set", cell: ({ course }) => `${course.best_set}` },
  { head: "Its power, W", cell: ({ course }) => watts(course.best_w) },
  { head: "Rise before it", cell: ({ course }) => percent(course.rise_percent) },
  { head: "Drop after it", cell: ({ course }) => percent(course.drop_percent) },
];

/** The best set of each session, over the weeks. */
export function SpeedWeeks({ exercise, id, weeks }: SpeedSeen) {
  const sessions = exercise.sessions.filter((one): one is Measured => one.course !== null);
  const [first, last] = [sessions[0], sessions.at(-1)];
  if (!first || !last || first === last) return null;
  const points = sessions.map((one) => ({ x: dayAt(one.on), y: one.course.best_w }));
  const series: Series[] = [
    { name: "between sessions", look: "solid", points },
    { name: "best set", look: "dots", points },
  ];
  return (
    <Plotted
      title={`${exercise.name}, best set of each session`}
      csv={tableAddress(id, "speed-sessions", weeks)}
      table={
        <NumberTable
          caption={`${exercise.name}, best set of each session`}
          rows={sessions.toReversed()}
          keyOf={(one) => `${one.on} ${one.session}`}
          columns={COLUMNS}
        />
      }
    >
      <LinePlot
        label={`Power of the best set from ${watts(first.course.best_w)} W to ${watts(last.course.best_w)} W`}
        unit="W, mean of the best set"
        series={series}
        values={ticks(0, Math.max(...points.map((point) => point.y)), 5)}
        between={[dayAt(first.on), dayAt(last.on)]}
        marksAt={dayMarks(first.on, last.on)}
      />
      <p class="aside-note">
        Sessions with different loads are not alike: most lifts have their greatest power at loads
        in between.
      </p>
    </Plotted>
  );
}
