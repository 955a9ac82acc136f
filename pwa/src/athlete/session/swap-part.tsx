import { useState } from "preact/hooks";

import type { SheetExercise } from "../../api/types";
import { useRecorder } from "./recording";
import type { SessionView } from "./view";

interface Props {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
}

/** Another exercise that this kit can do, its loads made by the server in advance. */
export function SwapPart({ view, exercise }: Props) {
  const [open, setOpen] = useState(false);
  const recorder = useRecorder(view.session);
  const planned = view.session.sheet.exercises.find(({ key }) => key === exercise.key);
  const begun = exercise.sets.some(({ key }) => view.session.record.sets.has(key));
  const others = planned?.alternatives ?? [];
  if (!planned || begun || others.length === 0) return null;
  const swapped = planned.exercise !== exercise.exercise;
  const choose = (to: string) => {
    recorder.swap(exercise.key, to);
    setOpen(false);
  };
  if (!open) {
    return (
      <button type="button" class="button quiet" onClick={() => setOpen(true)}>
        Swap this exercise
      </button>
    );
  }
  return (
    <div class="stack" role="group" aria-label={`In place of ${exercise.name}`}>
      {swapped && (
        <button type="button" class="button" onClick={() => choose(planned.exercise)}>
          {planned.name}, as planned
        </button>
      )}
      {others
        .filter((other) => other.exercise !== exercise.exercise)
        .map((other) => (
          <button
            key={other.exercise}
            type="button"
            class="button"
            onClick={() => choose(other.exercise)}
          >
            {other.name}
            <span class="small">
              {other.implement.name}
              {other.sets.some((load) => load !== null) ? "" : ", load by feel"}
            </span>
          </button>
        ))}
      <button type="button" class="button quiet" onClick={() => setOpen(false)}>
        Keep {exercise.name}
      </button>
    </div>
  );
}
