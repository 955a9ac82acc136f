import "./stepper.css";

interface Props {
  readonly label: string;
  /** As it is shown, or null where nothing is filled in. */
  readonly value: string | null;
  readonly onStep: (steps: 1 | -1) => void;
  readonly less?: string;
  readonly more?: string;
  readonly atLeast?: boolean;
  readonly atMost?: boolean;
}

/** A number between a minus and a plus, each large enough for a thumb that cannot aim. */
export function Stepper({ label, value, onStep, less, more, atLeast, atMost }: Props) {
  return (
    <div class="stepper" role="group" aria-label={label}>
      <button
        type="button"
        aria-label={less ?? `${label}: less`}
        disabled={atLeast}
        onClick={() => onStep(-1)}
      >
        <Sign />
      </button>
      <output class="stepper-value">
        <span class="stepper-figure">{value ?? "–"}</span>
        <span class="stepper-label">{label}</span>
      </output>
      <button
        type="button"
        aria-label={more ?? `${label}: more`}
        disabled={atMost}
        onClick={() => onStep(1)}
      >
        <Sign plus />
      </button>
    </div>
  );
}

export function Sign({ plus }: { readonly plus?: boolean }) {
  return (
    <svg class="sign" viewBox="0 0 24 24" aria-hidden="true">
      <path d={plus ? "M4 12h16M12 4v16" : "M4 12h16"} />
    </svg>
  );
}
