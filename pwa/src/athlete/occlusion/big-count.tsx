import { Sign } from "../../parts/stepper";

interface Props {
  readonly value: number | null;
  readonly onStep: (by: number) => void;
}

/** Repetitions, large enough for a limb that burns; five at a time as well as one. */
export function BigCount({ value, onStep }: Props) {
  return (
    <div class="big-count" role="group" aria-label="Reps">
      <button type="button" aria-label="−5 reps" onClick={() => onStep(-5)}>
        −5
      </button>
      <button type="button" aria-label="Reps: less" onClick={() => onStep(-1)}>
        <Sign />
      </button>
      <output>{value ?? "–"}</output>
      <button type="button" aria-label="Reps: more" onClick={() => onStep(1)}>
        <Sign plus />
      </button>
      <button type="button" aria-label="+5 reps" onClick={() => onStep(5)}>
        +5
      </button>
    </div>
  );
}
