import { useArmed } from "../device/armed";
import type { AtHand } from "./at-hand";
import { ExerciseHead } from "./exercise-head";
import { useRecorder } from "./recording";

const REASONS = [
  "No time",
  "Too tired",
  "Something hurts",
  "Kit taken",
  "Kit broken",
  "Another reason",
];

interface Props {
  readonly here: AtHand;
  readonly onBack: () => void;
}

/** Why a set is left out: one tap, no typing. */
export function SkipSet({ here, onBack }: Props) {
  const recorder = useRecorder(here.view.session);
  const armed = useArmed();
  // Before either side was done the whole set is left out at once.
  const half = here.record ? here.side : null;
  return (
    <>
      <main class="set-main" tabIndex={0}>
        <ExerciseHead here={here} />
      </main>
      <section class="set-panel" aria-label="Skip this set">
        <p class="lead">Skip {half ? `the ${half} side` : "this set"}. Why?</p>
        <div class="row">
          {REASONS.map((why) => (
            <button
              key={why}
              type="button"
              class="button tall"
              disabled={!armed}
              onClick={() => recorder.skip(here.set, why.toLowerCase(), half)}
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
