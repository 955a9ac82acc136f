/**
 * How a plate is drawn. Colours are those of the International Weightlifting Federation's technical
 * rules: 25 red, 20 blue, 15 yellow, 10 green, 5 white, and the same five again for 2.5, 2, 1.5, 1
 * and 0.5 kg (from memory). A plate of any other mass is drawn in steel. The number always stands
 * beside the colour.
 */

type PlateColour = "red" | "blue" | "yellow" | "green" | "white" | "steel";

const COLOURS: ReadonlyMap<number, PlateColour> = new Map([
  [25, "red"],
  [20, "blue"],
  [15, "yellow"],
  [10, "green"],
  [5, "white"],
  [2.5, "red"],
  [2, "blue"],
  [1.5, "yellow"],
  [1, "green"],
  [0.5, "white"],
]);

export function plateColour(massKg: number): PlateColour {
  return COLOURS.get(massKg) ?? "steel";
}

/**
 * Diameter in mm from that mass in kg on: 450 for the large discs by the rules; the small ones as they
 * are commonly made (from memory). A kit does not hold diameters.
 */
const DIAMETERS: readonly (readonly [number, number])[] = [
  [10, 450],
  [5, 230],
  [2.5, 210],
  [2, 190],
  [1.5, 175],
  [1, 160],
  [0, 135],
];

export function plateDiameter(massKg: number): number {
  return DIAMETERS.find(([from]) => massKg >= from)?.[1] ?? 135;
}

/** Thickness in mm where the kit does not say it: iron plates, common practice. */
const THICKNESSES: readonly (readonly [number, number])[] = [
  [20, 50],
  [15, 42],
  [10, 34],
  [5, 26],
  [2.5, 19],
  [0, 15],
];

export function usualThickness(massKg: number): number {
  return THICKNESSES.find(([from]) => massKg >= from)?.[1] ?? 15;
}
