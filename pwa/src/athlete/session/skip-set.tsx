import type { SheetExercise, SheetSet } from "../../api/types";
import { useArmed } from "../device/armed";
import { ExerciseHead } from "./exercise-head";
import { useRecorder } from "./recording";
import type { SessionView } from "./view";

const REASONS = [
  "No time",
  "Too tired",
  "Something hurts",
  "Kit taken",
  "Kit broken",
  "Another reason",
];

interface Props {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
  readonly set: SheetSet;
  readonly onBack: () => void;
}

/** Why a set is left out: one tap, no typing. */
export function SkipSet({ view, exercise, set, onBack }: Props) {
  const recorder = useRecorder(view.session);
  const armed = useArmed();
  return (
    <>
      <main class="set-main">
        <ExerciseHead view={view} exercise={exercise} set={set} />
      </main>
      <section class="set-panel" aria-label="Skip this set">
        <p class="lead">Skip this set. Why?</p>
        <div class="row">
          {REASONS.map((why) => (
            <button
              key={why}
              type="button"
              class="button tall"
              disabled={!armed}
              onClick={() => recorder.skip(set, why.toLowerCase())}
            >
              {why}
            </button>
          ))}
        </div>
        <button type="button" class="button quiet" onClick={onBack}>
          Back to the set
        </button>
      </section>
    </>
  );
}
