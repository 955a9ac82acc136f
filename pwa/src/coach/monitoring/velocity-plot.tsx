import type { VelocityLine, VelocitySeen } from "../answers";
import { figure, kilos } from "../block/wish-words";
import { tableAddress } from "../desk";
import { Legend } from "../plots/legend";
import { LinePlot, type Series } from "../plots/line-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { ticks } from "../plots/plot-scale";
import { Plotted } from "../plots/plotted";
import { calendarDate } from "../shell/when";
import type { SpeedSeen } from "./speed-section";
import { perSecond } from "./speed-words";
import { drawn, lineInWords } from "./velocity-line";

type Reading = VelocitySeen["points"][number];

const COLUMNS: readonly [Column<Reading>, ...Column<Reading>[]] = [
  { head: "On", cell: (one) => calendarDate(one.on) },
  { head: "Load, kg", cell: (one) => kilos(one.load_kg) },
  { head: "Fastest repetition, m/s", cell: (one) => perSecond(one.velocity_m_s) },
];

/** Loads and how fast they went up, and the maximum at the end of the line. */
export function VelocityPlot({ exercise: { name, velocity }, id, weeks }: SpeedSeen) {
  const { points, line, why_no_line: why } = velocity;
  if (points.length === 0) {
    return (
      <div class="plotted">
        <h3>{name}, load and velocity</h3>
        <p>{why} Sets with bands or chains have no place on a line of loads.</p>
      </div>
    );
  }
  return (
    <Plotted
      title={`${name}, load and velocity`}
      csv={tableAddress(id, "velocity", weeks)}
      table={
        <NumberTable
          caption={`${name}, load and velocity`}
          rows={points.toReversed()}
          keyOf={(one) => `${points.indexOf(one)}`}
          columns={COLUMNS}
        />
      }
    >
      <Drawing velocity={velocity} name={name} />
      {line ? <Line line={line} /> : <p>{why}</p>}
    </Plotted>
  );
}

function Drawing({ velocity, name }: { readonly velocity: VelocitySeen; readonly name: string }) {
  const series = drawn(velocity);
  const every = series.flatMap((one) => one.points);
  const loads = ticks(
    Math.min(...every.map((one) => one.x)),
    Math.max(...every.map((one) => one.x)),
    6,
  );
  return (
    <>
      <Legend items={series.map(({ name: item, look }: Series) => ({ name: item, look }))} />
      <LinePlot
        label={`${name}: velocity in metres a second over load in kilograms. ${
          velocity.line ? lineInWords(velocity.line) : velocity.why_no_line
        }`}
        unit="m/s"
        across="kg"
        series={series}
        values={ticks(0, Math.max(...every.map((one) => one.y)), 5)}
        between={[loads[0] ?? 0, loads.at(-1) ?? 1]}
        marksAt={() => loads.map((at) => ({ at, text: figure(at) }))}
      />
    </>
  );
}

function Line({ line }: { readonly line: VelocityLine }) {
  return (
    <>
      <p>{lineInWords(line)}</p>
      <p class="aside-note">
        Fit: r² {line.r2.toFixed(2)}, standard error {perSecond(line.standard_error_m_s)} m/s or{" "}
        {kilos(line.standard_error_kg)} kg. A maximum goes up at{" "}
        {perSecond(line.minimal_velocity_m_s)} m/s ({line.minimal_velocity_from}). It is a reading
        with noise; loads are not set anew by it alone.
      </p>
    </>
  );
}
