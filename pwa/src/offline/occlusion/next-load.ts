/** Next time's load, looked up in the sheet's table by the repetitions that were reached. */
import type { SheetExercise } from "../../api/types";

export type NextTable = NonNullable<NonNullable<SheetExercise["occlusion"]>["next"]>;
type LoadStep = "up" | "hold" | "down" | "down-a-tenth";

export interface NextLoad {
  readonly step: LoadStep;
  readonly kg: number;
}

/** The first line of the table that holds decides; a list broken off by a sign, or short, holds. */
export function nextLoad(table: NextTable, reps: readonly number[], stopped = false): NextLoad {
  const hold: NextLoad = { step: "hold", kg: table.hold_kg };
  if (stopped || reps.length < table.sets) return hold;
  const total = reps.reduce((sum, one) => sum + one, 0);
  if (total < table.total_under) return { step: "down-a-tenth", kg: table.tenth_kg };
  if ((reps[0] ?? 0) < table.first_under) return { step: "down", kg: table.down_kg };
  if ((reps[table.sets - 1] ?? 0) > table.last_over) return { step: "up", kg: table.up_kg };
  return hold;
}

/** Of two limbs the one that asks for less decides: one bar, or one pair of dumbbells, serves both. */
export function lighter(one: NextLoad, other: NextLoad): NextLoad {
  return other.kg < one.kg || (other.kg === one.kg && other.step === "down-a-tenth") ? other : one;
}
