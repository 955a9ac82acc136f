import type { TrendPoint } from "../../offline/database";
import { useUnits } from "../hooks";
import { mass } from "../words/mass";
import { relativeDay } from "../words/times";

const WIDTH = 358;
const HEIGHT = 96;
const PAD = 8;

interface Props {
  readonly name: string;
  /** Oldest first, at least none. */
  readonly points: readonly TrendPoint[];
  readonly now: number;
}

/** A maximum with its band of doubt over time, and the same as a table. */
export function Trend({ name, points, now }: Props) {
  const units = useUnits();
  const last = points.at(-1);
  if (!last) return null;
  return (
    <figure class="trend">
      <figcaption>
        <span class="next-name">{name}</span>
        <span class="trend-figure">{mass(last.kg, units)}</span>
        <span class="next-when">
          likely {mass(last.low_kg, units)} to {mass(last.high_kg, units)}
        </span>
      </figcaption>
      {points.length > 1 && (
        <>
          <Plot points={points} />
          <details>
            <summary>As a table</summary>
            <table>
              <thead>
                <tr>
                  <th scope="col">When</th>
                  <th scope="col">Maximum</th>
                  <th scope="col">Likely</th>
                </tr>
              </thead>
              <tbody>
                {points.toReversed().map((point) => (
                  <tr key={point.at}>
                    <td>{relativeDay(point.at, now)}</td>
                    <td>{mass(point.kg, units)}</td>
                    <td>
                      {mass(point.low_kg, units)} to {mass(point.high_kg, units)}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </details>
        </>
      )}
    </figure>
  );
}

function Plot({ points }: { readonly points: readonly TrendPoint[] }) {
  const x = scale(extent(points.map(({ at }) => at)), PAD, WIDTH - PAD);
  const heights = points.flatMap(({ low_kg, high_kg }) => [low_kg, high_kg]);
  const y = scale(extent(heights), HEIGHT - PAD, PAD);
  const line = (of: (point: TrendPoint) => number, some = points) =>
    some.map((point) => `${x(point.at).toFixed(1)} ${y(of(point)).toFixed(1)}`).join("L");
  const band = `M${line((p) => p.high_kg)}L${line((p) => p.low_kg, points.toReversed())}Z`;
  const last = points.at(-1);
  return (
    <svg class="plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path class="plot-band" d={band} />
      <path class="plot-line" d={`M${line((p) => p.kg)}`} />
      {last && <circle class="plot-now" cx={x(last.at)} cy={y(last.kg)} r="4" />}
    </svg>
  );
}

type Extent = readonly [number, number];

function extent(values: readonly number[]): Extent {
  return [Math.min(...values), Math.max(...values)];
}

function scale([from, to]: Extent, low: number, high: number): (value: number) => number {
  const range = to - from || 1;
  return (value) => low + ((value - from) / range) * (high - low);
}
