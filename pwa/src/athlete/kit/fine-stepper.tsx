import { Sign } from "../../parts/stepper";

interface Props {
  readonly label: string;
  readonly unit: string;
  /** In whole steps of `1 / per`. */
  readonly value: number;
  readonly per: number;
  readonly least: number;
  readonly most: number;
  readonly onValue: (value: number) => void;
}

const LARGE = 10;

/** A number with a small and a large step to each side: ten small ones are a large one. */
export function FineStepper({ label, unit, value, per, least, most, onValue }: Props) {
  const step = (by: number) => onValue(Math.min(most, Math.max(least, value + by)));
  const buttons = [-LARGE, -1, 1, LARGE];
  return (
    <div class="fine-stepper" role="group" aria-label={label}>
      <output>
        <span class="stepper-figure">
          {(value / per).toFixed(per === 1 ? 0 : 1)} {unit}
        </span>
        <span class="stepper-label">{label}</span>
      </output>
      {buttons.map((by) => (
        <button
          key={by}
          type="button"
          aria-label={`${label}: ${by < 0 ? "less" : "more"} by ${Math.abs(by) / per} ${unit}`}
          disabled={by < 0 ? value <= least : value >= most}
          onClick={() => step(by)}
        >
          <Sign plus={by > 0} />
          {Math.abs(by) / per}
        </button>
      ))}
    </div>
  );
}
