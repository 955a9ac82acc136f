import { catalogue } from "../desk";
import { ask, learnExercises, useDesk } from "../shell/desk-state";

/** Learns the exercises anew after one of them was changed. */
export function useLearnAnew(): () => Promise<void> {
  const desk = useDesk();
  return async () => learnExercises(desk, await ask(desk, catalogue));
}
