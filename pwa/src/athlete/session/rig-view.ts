/** What of a rig is shown at a set, worked out from the sheet and the load that was chosen. */
import type { SheetExercise, SheetLoad, SheetSet } from "../../api/types";
import type { Curve } from "../../parts/curve-words";
import type { SessionView } from "./view";

/** Nothing of the exercise was done yet, warm-ups included. */
export function isFresh({ session }: SessionView, { key, sets }: SheetExercise): boolean {
  return !session.ramp[key] && !sets.some((set) => session.record.sets.has(set.key));
}

/**
 * The force curve for the load that was chosen. What hangs still adds the same all the way, so that another
 * load moves the whole curve; a landmine's would turn as well, and is shown for the planned load only.
 */
export function curveFor(
  { implement, loads = [] }: SheetExercise,
  { curve, load: planned }: SheetSet,
  load: SheetLoad,
): Curve | null {
  const reckoned = planned === undefined ? undefined : loads[planned];
  if (!curve || !reckoned) return null;
  const more = load.kg - reckoned.kg;
  if (more === 0) return curve;
  return implement.kind === "landmine" ? null : moved(curve, more);
}

function moved(curve: Curve, kg: number): Curve {
  const { start_kg, mean_kg, end_kg, points_kg } = curve;
  return {
    ...curve,
    start_kg: start_kg + kg,
    mean_kg: mean_kg + kg,
    end_kg: end_kg + kg,
    ...(points_kg && { points_kg: points_kg.map((each) => each + kg) }),
  };
}

/** Where a hold is held, 0 start and 1 end of the lift; null where nothing is held. */
export function heldAt({ method, details }: SheetExercise): number | null {
  return method === "hold" && details && "position" in details ? details.position : null;
}

/** The load for which the order of loading and stripping was found. */
export function heaviestKg({ sets, loads = [] }: SheetExercise): number | null {
  const kgs = sets.flatMap(({ load }) => (load === undefined ? [] : (loads[load]?.kg ?? [])));
  return kgs.length > 0 ? Math.max(...kgs) : null;
}
