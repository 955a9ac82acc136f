/** What a line becomes on an athlete's kit, in words and figures taken from the load sheet. */
import type { LoadSheet, SheetExercise, SheetLoad, SheetSet } from "../../api/types";
import type { Curve } from "../../parts/curve-words";
import { figure, kilos, signed } from "../block/wish-words";

export interface Outcome {
  /** Which sets of the exercise, "1–3"; the sets of a line may come out differently. */
  readonly sets: string;
  readonly load: string;
  readonly made: string;
  readonly off: string;
  /** Where the resistance changes on the way. */
  readonly curve: Curve | null;
  readonly why: string;
}

export function sheetExercise(
  sheets: readonly LoadSheet[],
  session: string,
  exercise: string,
): SheetExercise | undefined {
  const sheet = sheets.find((each) => each.session === session);
  return sheet?.exercises.find((each) => each.key === exercise);
}

/** The outcomes of the sets with these keys; sets that come out the same are told together. */
export function outcomesOf(sheet: SheetExercise, keys: readonly string[]): Outcome[] {
  const sets = keys.flatMap((key) => sheet.sets.find((set) => set.key === key) ?? []);
  const told: { first: number; last: number; outcome: Omit<Outcome, "sets"> }[] = [];
  for (const set of sets) {
    const outcome = outcomeOf(sheet, set);
    const before = told.at(-1);
    if (before && same(before.outcome, outcome)) before.last = set.number;
    else told.push({ first: set.number, last: set.number, outcome });
  }
  return told.map(({ first, last, outcome }) => ({
    ...outcome,
    sets: first === last ? `${first}` : `${first}–${last}`,
  }));
}

function outcomeOf(sheet: SheetExercise, set: SheetSet): Omit<Outcome, "sets"> {
  const load = set.load === undefined ? undefined : sheet.loads?.[set.load];
  return {
    load: load ? `${kilos(load.kg)} kg` : "",
    made: load ? madeOf(load, sheet.implement) : "",
    off: offInWords(set),
    curve: changes(set.curve) ? set.curve : null,
    why: set.why ?? "",
  };
}

/** "25 + 10 + 2.5 a side", "pin 45 + 2.5", "22.5 in each hand". */
export function madeOf(load: SheetLoad, implement: SheetExercise["implement"]): string {
  const addOns = load.add_ons_kg ?? [];
  if (load.pin_kg !== undefined) return `pin ${[load.pin_kg, ...addOns].map(figure).join(" + ")}`;
  const plates = (load.side ?? []).map(figure).join(" + ");
  if (load.piece_kg !== undefined && !plates) {
    return `${figure(load.piece_kg)} kg ${implement.kind === "dumbbells" ? "in each hand" : "in one hand"}`;
  }
  const bare = implement.sides ? "bare" : "";
  if (!plates) return bare;
  return implement.sides === 1 ? `${plates} on the sleeve` : `${plates} a side`;
}

/** "0.4 kg over the wish of 87.1"; nothing where it is met or where there is none. */
function offInWords(set: SheetSet): string {
  if (set.off_kg === undefined || set.wish_kg === undefined) return "";
  if (Math.abs(set.off_kg) < 0.05) return "as wished";
  return `${signed(round(set.off_kg))} to the wish of ${figure(round(set.wish_kg))} kg`;
}

/** A bar alone, or a stack, resists the same all the way: nothing to tell. */
function changes(curve: Curve | undefined): curve is Curve {
  return curve !== undefined && Math.abs(curve.start_kg - curve.end_kg) >= 0.05;
}

/** "5 × 40, 3 × 60, 2 × 75 kg", or nothing where there is no ramp. */
export function rampInWords(sheet: SheetExercise): string {
  const steps = (sheet.ramp ?? []).flatMap((step) => {
    const load = sheet.loads?.[step.load];
    return load ? [`${step.reps} × ${kilos(load.kg)}`] : [];
  });
  return steps.length > 0 ? `${steps.join(", ")} kg` : "";
}

function round(kg: number): number {
  return Math.round(kg * 10) / 10;
}

function same(one: object, other: object): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
