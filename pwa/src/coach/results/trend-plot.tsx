import { useRef } from "preact/hooks";

import type { Trend, TrendPoint } from "../answers";
import { figure } from "../block/wish-words";
import { scale, ticks, timeTicks } from "../plots/plot-scale";
import { useWidth } from "../plots/use-width";
import { calendarDate, date } from "../shell/when";

const HEIGHT = 260;
const LEFT = 52;
const RIGHT = 12;
const TOP = 24;
const BOTTOM = 34;

/** The maximum over time with its 90 % band, drawn for the width that there is. */
export function TrendPlot({ trend }: { readonly trend: Trend }) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  return (
    <div class="plot" ref={frame}>
      {width > 0 && <Drawing trend={trend} width={width} />}
    </div>
  );
}

function Drawing({ trend, width }: { readonly trend: Trend; readonly width: number }) {
  const { points } = trend;
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return null;
  const kilograms = ticks(
    Math.min(...points.map((point) => Math.min(point.low_smooth_kg, point.kg))),
    Math.max(...points.map((point) => Math.max(point.high_smooth_kg, point.kg))),
    6,
  );
  const x = scale([at(first), at(last)], [LEFT + 8, width - RIGHT - 8]);
  const y = scale([kilograms[0] ?? 0, kilograms.at(-1) ?? 1], [HEIGHT - BOTTOM, TOP]);
  const moments = timeTicks(at(first), at(last), Math.max(2, Math.floor(width / 130)));
  return (
    <svg
      viewBox={`0 0 ${width} ${HEIGHT}`}
      width={width}
      height={HEIGHT}
      role="img"
      aria-label={said(trend)}
    >
      <text class="axis" x={LEFT - 8} y={12} text-anchor="end">
        kg
      </text>
      {kilograms.map((kg) => (
        <g key={kg}>
          <line class="rule" x1={LEFT} x2={width - RIGHT} y1={y(kg)} y2={y(kg)} />
          <text class="axis" x={LEFT - 8} y={y(kg) + 4} text-anchor="end">
            {figure(kg)}
          </text>
        </g>
      ))}
      {moments.map((moment) => (
        <text
          key={moment}
          class="axis"
          x={x(moment)}
          y={HEIGHT - 12}
          text-anchor={anchor(x(moment), width)}
        >
          {date(moment)}
        </text>
      ))}
      <Band points={points} x={x} y={y} />
      <polyline
        class="trend"
        points={points.map((point) => `${x(at(point))},${y(point.smooth_kg)}`).join(" ")}
      />
      {points.map((point) => (
        <circle key={point.on} class="point" cx={x(at(point))} cy={y(point.kg)} r={3} />
      ))}
    </svg>
  );
}

function at(point: TrendPoint): number {
  return Date.parse(point.on);
}

interface BandProps {
  readonly points: readonly TrendPoint[];
  readonly x: (at: number) => number;
  readonly y: (kg: number) => number;
}

function Band({ points, x, y }: BandProps) {
  const high = points.map((point) => `${x(at(point))},${y(point.high_smooth_kg)}`);
  const low = points.toReversed().map((point) => `${x(at(point))},${y(point.low_smooth_kg)}`);
  return (
    <>
      <polygon class="band" points={[...high, ...low].join(" ")} />
      <polyline class="band-edge" points={high.join(" ")} />
      <polyline class="band-edge" points={low.join(" ")} />
    </>
  );
}

const HALF_A_DATE = 45;

/** A date is written around its place, except where it would leave the drawing. */
function anchor(x: number, width: number): "start" | "middle" | "end" {
  if (x < LEFT + HALF_A_DATE) return "start";
  return x > width - HALF_A_DATE ? "end" : "middle";
}

function said({ name, points }: Trend): string {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return `${name}: nothing known`;
  const change = `from ${figure(first.smooth_kg)} kg on ${calendarDate(first.on)} to ${figure(last.smooth_kg)} kg on ${calendarDate(last.on)}`;
  return `${name}: the maximum ${change}. The table below has every point.`;
}
