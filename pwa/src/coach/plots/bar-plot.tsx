import { useId } from "preact/hooks";

import { figure } from "../block/wish-words";
import { bands, named, stacked, type Band } from "./bars";
import { Hatches, lookOf, type Look } from "./looks";
import { PlotFrame, type Area } from "./plot-frame";
import { ticks } from "./plot-scale";

export interface Bar {
  readonly key: string;
  /** Under the bar. */
  readonly name: string;
  /** From the ground upwards, one for each look. */
  readonly parts: readonly number[];
  /** Drawn as a stroke across the bar's place. */
  readonly peak?: number;
  /** Written above the bar. */
  readonly word?: string;
}

interface BarPlotProps {
  readonly label: string;
  readonly unit: string;
  readonly bars: readonly Bar[];
  readonly looks?: readonly Look[];
  readonly across?: string;
  readonly height?: number;
  /** The top of the axis, where several plots share one. */
  readonly most?: number;
  /** Rising values that get a rule, where round ones do not do. */
  readonly values?: readonly number[];
}

const PLAIN: readonly Look[] = ["full"];

/** Bars from zero, each in one or several parts. */
export function BarPlot(props: BarPlotProps) {
  const { bars, label, unit, across, looks = PLAIN } = props;
  const id = useId();
  const values =
    props.values ?? ticks(0, props.most ?? Math.max(1, ...bars.map(topOf)), props.height ? 3 : 5);
  const places = (area: Area) => bands(bars.length, [area.left, area.right]);
  const widest = Math.max(...bars.map((bar) => bar.name.length));
  return (
    <PlotFrame
      label={label}
      unit={unit}
      values={values}
      {...(across ? { across } : {})}
      {...(props.height ? { height: props.height } : {})}
      marks={(area) =>
        named(bars.length, area.right - area.left, 12 + widest * 8).map((place) => ({
          x: places(area)[place]?.middle ?? 0,
          text: bars[place]?.name ?? "",
        }))
      }
    >
      {(area, y) => (
        <>
          <Hatches id={id} looks={looks} />
          {places(area).map((band, place) => {
            const bar = bars[place];
            const seen = { bar, band, y, id, looks, figures: fits(bars, band) };
            return bar && <Stack key={bar.key} {...seen} bar={bar} />;
          })}
        </>
      )}
    </PlotFrame>
  );
}

interface StackProps {
  readonly bar: Bar;
  readonly band: Band;
  readonly y: (value: number) => number;
  readonly id: string;
  readonly looks: readonly Look[];
  readonly figures: boolean;
}

function Stack({ bar, band, y, id, looks, figures }: StackProps) {
  const whole = total(bar);
  return (
    <g>
      {stacked(bar.parts).map(([from, to], part) => {
        const look = looks[part] ?? "full";
        return (
          to > from && (
            <rect
              key={look}
              class={`plot-bar look-${look}`}
              fill={lookOf(id, look)}
              x={band.start}
              width={band.width}
              y={y(to)}
              height={y(from) - y(to)}
            />
          )
        );
      })}
      {bar.peak !== undefined && (
        <path class="plot-peak" d={`M${band.start} ${y(bar.peak)}h${band.width}`} />
      )}
      {figures && whole > 0 && (
        <text class="value" x={band.middle} y={y(topOf(bar)) - 5} text-anchor="middle">
          {written(whole)}
        </text>
      )}
      {bar.word && (
        <text class="value" x={band.middle} y={y(topOf(bar)) - 19} text-anchor="middle">
          {bar.word}
        </text>
      )}
    </g>
  );
}

const FIGURE_PX = 7.5;

/** Is there room for the figure of every bar above it? */
function fits(bars: readonly Bar[], band: Band): boolean {
  return bars.every((bar) => written(total(bar)).length * FIGURE_PX < band.step);
}

function written(value: number): string {
  return figure(Math.round(value * 10) / 10);
}

function topOf(bar: Bar): number {
  return Math.max(total(bar), bar.peak ?? 0);
}

function total(bar: Bar): number {
  return bar.parts.reduce((sum, part) => sum + part, 0);
}
