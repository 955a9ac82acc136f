/** What an exercise's method says beyond its sets. */
import type { SheetExercise } from "../../../api/types";

type Details = NonNullable<SheetExercise["details"]>;
type With<K extends string> = Extract<Details, Partial<Record<K, unknown>>>;

/** The details, if they are of the kind that has this field. */
export function rule<K extends string>({ details }: SheetExercise, field: K): With<K> | null {
  return details && field in details ? (details as With<K>) : null;
}
