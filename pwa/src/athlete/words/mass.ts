/** Masses as the athlete reads them. Pounds are for the eye only: everything is kept in kilograms. */

/** International avoirdupois pound, exactly 0.45359237 kg. */
const POUND_KG = 0.45359237;
/** Sheets round plates to the gram. */
const ROUNDED_KG = 0.002;

export interface Units {
  readonly pounds: boolean;
}

/** Without its unit: "92.5", and in pounds to the nearest half. */
export function figure(kg: number, { pounds }: Units): string {
  return pounds ? trimmed(Math.round((kg / POUND_KG) * 2) / 2) : trimmed(kg);
}

/** What was read in the athlete's own unit, in kilograms to the gram. */
export function kilograms(read: number, { pounds }: Units): number {
  return pounds ? Math.round(read * POUND_KG * 1000) / 1000 : read;
}

export function unit({ pounds }: Units): string {
  return pounds ? "lb" : "kg";
}

export function mass(kg: number, units: Units): string {
  return `${figure(kg, units)} ${unit(units)}`;
}

/**
 * The number on a plate. A plate keeps the number that is cast into it: in pounds where it was made in
 * pounds, else in kilograms, and then it says so to who reads pounds.
 */
export function plateFigure(kg: number, units: Units): string {
  if (!units.pounds) return trimmed(kg);
  const cast = Math.round((kg / POUND_KG) * 2) / 2;
  const madeInPounds = Math.abs(cast * POUND_KG - kg) < ROUNDED_KG;
  return madeInPounds ? trimmed(cast) : `${trimmed(kg)} kg`;
}

/** At most two decimals where they are quarters, else one. */
function trimmed(value: number): string {
  const quarters = Math.round(value * 4) / 4;
  const shown = Math.abs(value - quarters) < 0.005 ? quarters : Math.round(value * 10) / 10;
  return String(shown);
}
