/** A load in words: the large figure, what it is made of, and what to do to get it. */
import type { SheetExercise, SheetLoad } from "../../api/types";
import { handling } from "../../offline/stacks";
import { figure, mass, plateFigure, unit, type Units } from "./mass";

type Implement = SheetExercise["implement"];

interface Headline {
  /** In front of the figure: "2 ×", "Pin at". */
  readonly before: string;
  readonly figure: string;
  readonly unit: string;
}

export function headline({ kind }: Implement, load: SheetLoad, units: Units): Headline {
  const { kg, pin_kg, piece_kg } = load;
  if (typeof pin_kg === "number") return large("Pin at", pin_kg, units);
  if (typeof piece_kg === "number")
    return large(kind === "dumbbells" ? "2 ×" : "", piece_kg, units);
  return large("", kg, units);
}

function large(before: string, kg: number, units: Units): Headline {
  return { before, figure: figure(kg, units), unit: unit(units) };
}

/** Light collars are in the total, but need no mention. */
const HEAVY_COLLARS_KG = 1;

/** "92.5 kg", "pin at 55 kg", "2 × 20 kg": how a load that was done is told. */
export function loadInWords(exercise: SheetExercise | undefined, kg: number, units: Units): string {
  const load = exercise?.loads?.find((each) => each.kg === kg);
  if (!exercise || !load) return mass(kg, units);
  const told = headline(exercise.implement, load, units);
  return `${told.before} ${told.figure} ${told.unit}`.trim().toLowerCase();
}

/** " at 92.5 kg", ", pin at 55 kg": behind what was done with it. */
export function atLoad(words: string): string {
  return words.startsWith("pin at") ? `, ${words}` : ` at ${words}`;
}

/** What the total is made of: "Steel bar 20 kg". */
export function makeUp(implement: Implement, load: SheetLoad, units: Units): string {
  const { name, mass_kg, collars_kg, sides } = implement;
  if (typeof load.pin_kg === "number") {
    const added = (load.add_ons_kg ?? []).map((kg) => mass(kg, units)).join(" and ");
    return `${name}${added ? `, ${added} on top` : ""}; ${mass(load.kg, units)} at the handle`;
  }
  if (typeof load.piece_kg === "number") return name;
  if (sides === 1) return `${name}, plates only`;
  const heavy = collars_kg !== undefined && collars_kg >= HEAVY_COLLARS_KG && load.side?.length;
  const collars = heavy ? `, collars ${mass(collars_kg, units)}` : "";
  return typeof mass_kg === "number" ? `${name} ${mass(mass_kg, units)}${collars}` : name;
}

/** "on each side", "on the sleeve", "on the belt". */
function whereIn({ kind, sides }: Implement): string {
  if (sides === 2) return "each side";
  if (sides === 1) return "on the sleeve";
  return kind === "body" ? "on the belt" : "on each end";
}

interface Task {
  readonly text: string;
  readonly quiet: boolean;
}

/** What to do with the plates since the last set; null where there are none to speak of. */
export function task(
  implement: Implement,
  load: SheetLoad,
  hanging: { readonly side: readonly number[]; readonly known: boolean },
  units: Units,
): Task | null {
  const side = load.side ?? [];
  if (side.length === 0 && hanging.side.length === 0) return bare(implement, load);
  const { off, on } = handling(hanging.side, side);
  if (off.length === 0 && on.length === 0) return { text: "Same plates as before.", quiet: true };
  const list = (plates: readonly number[]) => plates.map((kg) => plateFigure(kg, units)).join(", ");
  const where = whereIn(implement);
  const offPart = off.length > 0 ? `Take off ${list(off)}` : "";
  const onPart = on.length > 0 ? `${offPart ? "put on" : "Put on"} ${list(on)}` : "";
  const parts = [offPart, onPart].filter((part) => part !== "").join(", then ");
  return { text: `${parts}, ${where}.`, quiet: false };
}

function bare({ kind, sides }: Implement, load: SheetLoad): Task | null {
  if (typeof load.pin_kg === "number" || typeof load.piece_kg === "number") return null;
  if (kind === "body") return { text: "No extra weight.", quiet: true };
  return sides ? { text: "The bare bar.", quiet: true } : null;
}

/** The whole picture for who cannot see it. */
export function picture(implement: Implement, load: SheetLoad, units: Units): string {
  const side = load.side ?? [];
  const plates = side.map((kg) => plateFigure(kg, units)).join(", ");
  if (side.length === 0) return `${implement.name}, no plates`;
  return `${implement.name}, ${whereIn(implement)}, from the inside: ${plates}`;
}
