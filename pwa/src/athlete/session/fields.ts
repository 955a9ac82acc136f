/** Which numbers of a set the athlete can change, and by what steps. */
import type { SheetExercise, SheetSet } from "../../api/types";
import type { SetDone } from "../../offline/entry";

export type FieldName = "reps" | "rir" | "seconds" | "distance_m" | "quality";

export interface Field {
  readonly name: FieldName;
  readonly label: string;
  readonly step: number;
  readonly least: number;
  readonly most: number;
  /** Where a first tap on plus or minus begins when nothing is filled in. */
  readonly from: number;
}

const FIELDS: Readonly<Record<FieldName, Omit<Field, "name">>> = {
  reps: { label: "Reps", step: 1, least: 0, most: 1000, from: 5 },
  rir: { label: "In reserve", step: 1, least: 0, most: 10, from: 2 },
  seconds: { label: "Seconds", step: 5, least: 0, most: 7200, from: 30 },
  distance_m: { label: "Metres", step: 5, least: 0, most: 100_000, from: 20 },
  quality: { label: "Quality 1–5", step: 1, least: 1, most: 5, from: 4 },
};

/** Unless the coach asks for one. */
const NO_RESERVE: ReadonlySet<SheetExercise["method"]> = new Set([
  "speed",
  "hold",
  "tempo",
  "one-sided",
  "occlusion",
  "timed",
  "warm-up",
]);

/** At most two, so that both stand beside each other under the thumb. */
export function fieldsFor(exercise: SheetExercise, { target }: SheetSet): Field[] {
  const { method } = exercise;
  const timed = Boolean(target.seconds) || method === "hold" || method === "timed";
  const far = Boolean(target.distance_m) || method === "timed";
  const names: FieldName[] = [];
  if (timed) names.push("seconds");
  if (far) names.push("distance_m");
  if (target.reps || (!timed && !far)) names.push("reps");
  if (method === "speed") names.push("quality");
  else if (asksReserve(method, target)) names.push("rir");
  return names.slice(0, 2).map((name) => ({ name, ...FIELDS[name] }));
}

function asksReserve(method: SheetExercise["method"], target: SheetSet["target"]): boolean {
  return !target.to_failure && (target.rir !== undefined || !NO_RESERVE.has(method));
}

export function stepField(field: Field, value: number | null | undefined, steps: number): number {
  if (typeof value !== "number") return field.from;
  const next = value + steps * field.step;
  return Math.min(field.most, Math.max(field.least, next));
}

/** Repetitions fill the planned blocks from the first on. */
export function withField(done: SetDone, name: FieldName, value: number): SetDone {
  const changed = { ...done, [name]: value };
  if (name !== "reps" || !done.blocks) return changed;
  let left = value;
  const last = done.blocks.length - 1;
  const blocks = done.blocks.map((planned, index) => {
    const here = index === last ? left : Math.min(planned, left);
    left -= here;
    return here;
  });
  return { ...changed, blocks };
}
