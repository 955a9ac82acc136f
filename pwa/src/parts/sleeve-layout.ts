/** Where the plates of one sleeve and their numbers stand in the drawing; lengths in drawing units. */
import { plateDiameter, usualThickness } from "./plates";

export const WIDTH = 358;
/** From the middle of the bar to the lower edge, where plates are cut off: to scale, not whole. */
const BELOW_AXIS = 40;
/** A drawing lower than this gives its plates what room it has. */
const LOW = 150;
const BELOW_AXIS_LOW = 26;
/** Shaft that shows inside of the sleeve, and the ring between both, in mm. */
export const SHAFT_MM = 70;
export const RING_MM = 30;
export const COLLAR_MM = 45;

const HIGHEST_LABEL = 22;
/** Between the foot of the numbers and the highest plate; in it the lines run to their plates. */
const BAND = 16;
const LARGEST_RADIUS_MM = 225;
const TOP = HIGHEST_LABEL + BAND + 6;
const MARGIN = 4;
const GAP = 10;

export interface DrawnPlate {
  readonly massKg: number;
  readonly label: string;
  readonly x: number;
  readonly width: number;
  readonly top: number;
  /** Middle of the number. */
  readonly labelX: number;
}

export interface SleeveLayout {
  /** Drawing units for a millimetre. */
  readonly scale: number;
  readonly height: number;
  /** Height of the bar's middle. */
  readonly axis: number;
  readonly plates: readonly DrawnPlate[];
  readonly sleeveX: number;
  readonly sleeveEnd: number;
  /** Where the stack ends and a collar begins. */
  readonly stackEnd: number;
  readonly labelY: number;
  readonly labelSize: number;
  /** Top of the highest plate: above it the lines to the plates may slant. */
  readonly highest: number;
}

export interface SleeveInput {
  /** Innermost first. */
  readonly side: readonly number[];
  readonly labels: readonly string[];
  readonly lengthM: number;
  /** Thickness in m by mass in kg, from the kit. */
  readonly thickness: ReadonlyMap<number, number>;
  /** Of the drawing, where its width is 358. */
  readonly height: number;
}

export function layOut({ side, labels, lengthM, thickness, height }: SleeveInput): SleeveLayout {
  const axis = height - (height < LOW ? BELOW_AXIS_LOW : BELOW_AXIS);
  const lengthMm = lengthM * 1000;
  const wholeMm = SHAFT_MM + RING_MM + lengthMm;
  const scale = Math.min((WIDTH - 2 * MARGIN) / wholeMm, (axis - TOP) / LARGEST_RADIUS_MM);
  const sleeveX = MARGIN + (SHAFT_MM + RING_MM) * scale;
  let x = sleeveX;
  const bare = side.map((massKg, index) => {
    const known = thickness.get(massKg);
    const width = (known === undefined ? usualThickness(massKg) : known * 1000) * scale;
    const plate = { massKg, label: labels[index] ?? "", x, width };
    x += width;
    return { ...plate, top: axis - (plateDiameter(massKg) / 2) * scale };
  });
  const labelSize = labelSizeFor(bare);
  const highest = Math.min(axis, ...bare.map(({ top }) => top));
  const centres = spread(
    bare.map((plate) => plate.x + plate.width / 2),
    bare.map(({ label }) => widthOf(label, labelSize)),
  );
  return {
    scale,
    height,
    axis,
    plates: bare.map((plate, index) => ({ ...plate, labelX: centres[index] ?? plate.x })),
    sleeveX,
    sleeveEnd: sleeveX + lengthMm * scale,
    stackEnd: x,
    labelY: Math.max(HIGHEST_LABEL, highest - BAND - 6),
    highest,
    labelSize,
  };
}

/** Smaller numbers only where so many plates hang there that they would not fit. */
function labelSizeFor(plates: readonly { readonly label: string }[]): number {
  const fits = [26, 22, 18, 15].find((size) => {
    const needed = plates.reduce((sum, { label }) => sum + widthOf(label, size) + GAP, 0);
    return needed <= WIDTH;
  });
  const asWide = plates.reduce((sum, { label }) => sum + widthOf(label, 1), 0);
  return fits ?? (WIDTH - plates.length * GAP) / asWide;
}

function widthOf(label: string, size: number): number {
  return label.length * size * 0.58;
}

/** Moves centres apart so that nothing overlaps, as near to their places as the width allows. */
function spread(places: readonly number[], widths: readonly number[]): number[] {
  const centres: number[] = [];
  let from = 0;
  for (const [index, place] of places.entries()) {
    const half = (widths[index] ?? 0) / 2;
    const centre = Math.max(place, from + half);
    centres.push(centre);
    from = centre + half + GAP;
  }
  let until = WIDTH;
  for (let index = centres.length - 1; index >= 0; index -= 1) {
    const half = (widths[index] ?? 0) / 2;
    centres[index] = Math.min(centres[index] ?? 0, until - half);
    until = (centres[index] ?? 0) - half - GAP;
  }
  return centres;
}
