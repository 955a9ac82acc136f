import type { AthleteExercises } from "../answers";
import { exercisesFor } from "../desk";
import { useLoad, type Load } from "../shell/use-load";

/** What the exercises are for the chosen athlete; null for nobody. */
export function useForAthlete(id: string): Load<AthleteExercises | null> {
  return useLoad<AthleteExercises | null>(`exercises for ${id}`, async () =>
    id === "" ? null : exercisesFor(id),
  );
}
