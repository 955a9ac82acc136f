import type { SheetExercise } from "../../api/types";
import { is } from "../../offline/entry";
import { useApp } from "../app-context";
import { targetInWords } from "../words/sets";
import type { AtHand } from "./at-hand";
import { Looks } from "./looks";
import { MethodLines } from "./method-lines";
import type { SessionView } from "./view";

interface Props {
  readonly here: AtHand;
}

/** Which exercise, which of its sets, what is asked for, and the cue. */
export function ExerciseHead({ here }: Props) {
  const { view, exercise, set } = here;
  const { router } = useApp();
  const place = exercise.sets.indexOf(set) + 1;
  const begun = exercise.sets.some(({ key }) => view.session.record.sets.has(key));
  const warm = (view.session.ramp[exercise.key] ?? 0) > 0;
  return (
    <div class="exercise-head">
      <h2>{exercise.name}</h2>
      <button
        type="button"
        class="arcade-button"
        aria-label={`Set ${place} of ${exercise.sets.length}. Show all sets`}
        onClick={() => router.go("/sets")}
      >
        <Arcade view={view} exercise={exercise} current={set.key} />
        <span>
          {place} of {exercise.sets.length}
        </span>
      </button>
      <p class="target">{targetInWords(set.target, exercise)}</p>
      <Looks exercise={exercise} />
      <MethodLines here={here} />
      {exercise.cue && <p class="cue">{exercise.cue}</p>}
      {!begun && !warm && <Cautions exercise={exercise} />}
    </div>
  );
}

export function Cautions({ exercise }: { readonly exercise: SheetExercise }) {
  const lines = [...(exercise.cautions ?? []), ...(exercise.notes ?? [])];
  if (lines.length === 0) return null;
  return (
    <ul class="cautions" aria-label="Before you lift">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

interface ArcadeProps {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
  readonly current: string;
}

const ARCH = "M2 23V10a7 7 0 0 1 14 0v13z";
const MOST_ARCHES = 10;

/** One arch for each set: filled when done, struck out when skipped, with a foot line when it is on. */
function Arcade({ view, exercise, current }: ArcadeProps) {
  const { sets } = exercise;
  if (sets.length > MOST_ARCHES) return null;
  return (
    <svg class="arcade" viewBox={`0 0 ${sets.length * 20} 28`} aria-hidden="true">
      {sets.map(({ key }, index) => {
        const entry = view.session.record.sets.get(key)?.entry;
        const skipped = entry !== undefined && !is(entry, "set.done");
        const look = key === current ? "arch-now" : entry && !skipped ? "arch-done" : "arch-open";
        return (
          <g key={key} class={look} transform={`translate(${index * 20} 0)`}>
            <path d={ARCH} />
            {skipped && <path class="arch-skip" d="M4 22L14 6" />}
            {key === current && <path class="arch-foot" d="M3 26.5h12" />}
          </g>
        );
      })}
    </svg>
  );
}
