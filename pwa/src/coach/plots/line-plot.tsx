import { PlotFrame, type Area, type Mark } from "./plot-frame";
import { scale } from "./plot-scale";

export type LineLook = "solid" | "dashed" | "dots";

interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Series {
  readonly name: string;
  readonly look: LineLook;
  readonly points: readonly Point[];
}

interface LinePlotProps {
  readonly label: string;
  readonly unit: string;
  readonly series: readonly Series[];
  /** Rising values that get a rule. */
  readonly values: readonly number[];
  readonly between: readonly [number, number];
  /** The places to be marked for a width, each with its word. */
  readonly marksAt: (width: number) => readonly { readonly at: number; readonly text: string }[];
  readonly across?: string;
  readonly height?: number;
}

const INSET = 8;

/** Points over an even axis, joined or not. */
export function LinePlot(props: LinePlotProps) {
  const { label, unit, series, values, between, marksAt, across, height } = props;
  const xOf = (area: Area) => scale(between, [area.left + INSET, area.right - INSET]);
  const marks = (area: Area): Mark[] => {
    const x = xOf(area);
    return marksAt(area.right - area.left).map(({ at, text }) => ({ x: x(at), text }));
  };
  return (
    <PlotFrame
      label={label}
      unit={unit}
      values={values}
      marks={marks}
      {...(across ? { across } : {})}
      {...(height ? { height } : {})}
    >
      {(area, y) =>
        series.map((one) => <OneSeries key={one.name} series={one} x={xOf(area)} y={y} />)
      }
    </PlotFrame>
  );
}

interface OneSeriesProps {
  readonly series: Series;
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

function OneSeries({ series: { look, points }, x, y }: OneSeriesProps) {
  if (look === "dots") {
    return (
      <>
        {points.map((point) => (
          <circle
            key={`${point.x} ${point.y}`}
            class="point"
            cx={x(point.x)}
            cy={y(point.y)}
            r={4}
          />
        ))}
      </>
    );
  }
  const along = points.map((point) => `${x(point.x)},${y(point.y)}`).join(" ");
  return <polyline class={`plot-line look-${look}`} points={along} />;
}
