import type { SheetExercise } from "../../api/types";
import type { Use } from "../../offline/swaps";
import { useApp } from "../app-context";
import { useRecorder } from "./recording";
import { failureInWords } from "./swap-words";
import type { SessionView } from "./view";

interface Props {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
  readonly use: Use;
}

/** What has failed in this session is not asked for again without a word. */
export function FailedFirst({ view, exercise, use }: Props) {
  const { focus, router } = useApp();
  const recorder = useRecorder(view.session);
  const swaps = view.session.record.swapped.get(exercise.key);
  const asNow = swaps?.at(-1)?.body.to ?? exercise.exercise;
  return (
    <main class="page">
      <h2>{exercise.name}</h2>
      <p class="lead">{failureInWords(use)}. You said so earlier, and this asks for it too.</p>
      <button
        type="button"
        class="button main"
        onClick={() => {
          focus.value = { exercise: exercise.key, correcting: null };
          router.go("/swap");
        }}
      >
        See what to do instead
      </button>
      <button type="button" class="button" onClick={() => recorder.swap(exercise.key, asNow)}>
        It is fine after all
      </button>
    </main>
  );
}
