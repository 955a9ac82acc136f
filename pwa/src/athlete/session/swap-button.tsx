import type { SheetExercise } from "../../api/types";
import { useApp } from "../app-context";

/** To other ways of doing it, where the sheet has some. */
export function SwapButton({ exercise }: { readonly exercise: SheetExercise }) {
  const { focus, router } = useApp();
  if (!exercise.alternatives?.length) return null;
  return (
    <button
      type="button"
      class="button quiet"
      aria-label={`Swap ${exercise.name}`}
      onClick={() => {
        focus.value = { exercise: exercise.key, correcting: null };
        router.go("/swap");
      }}
    >
      Swap
    </button>
  );
}
