/** A force curve in words: whose force it is, the numbers that matter, and the line for who cannot see it. */
import type { SheetSet } from "../api/types";
import { forceAt } from "./curve-line";

export type Curve = NonNullable<SheetSet["curve"]>;

/** How masses are read here: "88.5" and "kg", or the same in pounds. */
export interface Reading {
  readonly figure: (kg: number) => string;
  readonly unit: string;
}

export interface Lift {
  /** The kind of the implement that is lifted. */
  readonly kind: string;
  /** Where in the lift it is held, 0 start and 1 end; absent where it moves. */
  readonly heldAt?: number;
}

interface CurveFigure {
  readonly label: string;
  readonly figure: string;
}

interface CurveWords {
  readonly caption: string;
  readonly figures: readonly CurveFigure[];
  readonly picture: string;
}

export function curveInWords(curve: Curve, lift: Lift, reading: Reading): CurveWords {
  const { figure, unit } = reading;
  const [first, last] = ENDS[lift.kind] ?? ["bottom", "top"];
  const doubt = figure(curve.doubt_kg ?? 0);
  const whose = PLACES[lift.kind] ?? "In all";
  return {
    caption: `${whose}, in ${unit}${doubt === "0" ? "" : `, give or take ${doubt}`}`,
    figures: figuresOf(curve, lift, first, last).map(([label, kg]) => ({
      label,
      figure: figure(kg),
    })),
    picture: `Force curve from ${first} to ${last}: ${along(curve).map(figure).join(", ")} ${unit}`,
  };
}

/** What moves down or sideways has no bottom and top that everybody would name alike. */
const ENDS: Readonly<Record<string, readonly [string, string]>> = {
  stack: ["start", "end"],
  band: ["start", "end"],
  body: ["start", "end"],
};

const PLACES: Readonly<Record<string, string>> = {
  landmine: "In the hand",
  stack: "At the handle",
};

/** A hold near an end of the lift is told by that end's own number. */
const AT_AN_END = 0.02;

function figuresOf(
  curve: Curve,
  { heldAt }: Lift,
  first: string,
  last: string,
): [string, number][] {
  const start: [string, number] = [first, curve.start_kg];
  const end: [string, number] = [last, curve.end_kg];
  if (heldAt === undefined) return [start, ["average", curve.mean_kg], end];
  const held: [string, number] = ["held here", forceAt(drawn(curve), heldAt)];
  if (heldAt <= AT_AN_END) return [held, end];
  return heldAt >= 1 - AT_AN_END ? [start, held] : [start, held, end];
}

/** The points of the line; where a sheet has none, its two ends. */
export function drawn({ points_kg = [], start_kg, end_kg }: Curve): readonly number[] {
  return points_kg.length > 1 ? points_kg : [start_kg, end_kg];
}

/** Five points tell the shape. */
function along(curve: Curve): number[] {
  return [0, 0.25, 0.5, 0.75, 1].map((position) => forceAt(drawn(curve), position));
}
