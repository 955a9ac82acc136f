import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";

import { figure } from "../block/wish-words";
import { scale } from "./plot-scale";
import { useWidth } from "./use-width";

/** Where on the drawing the values go. */
export interface Area {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What is written under the plot, and where. */
export interface Mark {
  readonly x: number;
  readonly text: string;
}

interface PlotFrameProps {
  /** What the plot shows, for who does not see it. */
  readonly label: string;
  readonly unit: string;
  /** Rising values that get a rule; the first and the last are the ends of the axis. */
  readonly values: readonly number[];
  readonly marks: (area: Area) => readonly Mark[];
  /** What the marks count, where they do not say it themselves. */
  readonly across?: string;
  readonly height?: number;
  readonly children: (area: Area, y: (value: number) => number) => ComponentChildren;
}

const HEIGHT = 240;
const TOP = 44;
const SMALL_TOP = 32;
const SMALL = 150;
const RIGHT = 10;
const FIGURE_PX = 8;

/** Rules, units and marks around what a plot shows, for the width that there is. */
export function PlotFrame(props: PlotFrameProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  return (
    <div class="plot" ref={frame}>
      {width > 0 && <Drawing {...props} width={width} />}
    </div>
  );
}

function Drawing(props: PlotFrameProps & { readonly width: number }) {
  const { label, unit, values, marks, across, width, height = HEIGHT } = props;
  const area = areaOf(values, width, height, across !== undefined);
  const y = scale([values[0] ?? 0, values.at(-1) ?? 1], [area.bottom, area.top]);
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={label}
    >
      <text class="axis" x={0} y={12}>
        {unit}
      </text>
      <Rules area={area} values={values} y={y} />
      {marks(area).map(({ x, text }) => (
        <text
          key={text}
          class="axis"
          x={x}
          y={area.bottom + 18}
          text-anchor={anchor(x, text, area)}
        >
          {text}
        </text>
      ))}
      {across && (
        <text class="axis" x={area.right} y={height - 4} text-anchor="end">
          {across}
        </text>
      )}
      {props.children(area, y)}
    </svg>
  );
}

interface RulesProps {
  readonly area: Area;
  readonly values: readonly number[];
  readonly y: (value: number) => number;
}

function Rules({ area, values, y }: RulesProps) {
  return (
    <>
      {values.map((value) => (
        <g key={value}>
          <line class="rule" x1={area.left} x2={area.right} y1={y(value)} y2={y(value)} />
          <text class="axis" x={area.left - 8} y={y(value) + 4} text-anchor="end">
            {figure(value)}
          </text>
        </g>
      ))}
    </>
  );
}

function areaOf(values: readonly number[], width: number, height: number, across: boolean): Area {
  const figures = Math.max(...values.map((value) => figure(value).length));
  const left = 12 + figures * FIGURE_PX;
  const top = height < SMALL ? SMALL_TOP : TOP;
  return { width, left, right: width - RIGHT, top, bottom: height - (across ? 42 : 26) };
}

/** A mark is written around its place, except where it would leave the drawing. */
function anchor(x: number, text: string, area: Area): "start" | "middle" | "end" {
  const half = (text.length * FIGURE_PX) / 2;
  if (x - half < 0) return "start";
  return x + half > area.width ? "end" : "middle";
}
