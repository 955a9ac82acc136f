import "./pin-stack.css";

interface Props {
  /** Masses at which the pin can stand, lightest first. */
  readonly pins: readonly number[];
  readonly at: number;
  readonly labels: ReadonlyMap<number, string>;
  /** Room for the drawing, in units of which its width has 358. */
  readonly height: number;
}

const MOST_ROWS = 7;
const LEAST_ROWS = 3;
const ROW = 25;
const WIDTH = 358;

/** The part of a weight stack around the pin, with the pin in its hole. */
export function PinStack({ pins, at, labels, height }: Props) {
  const rows = Math.min(Math.max(Math.floor((height - 4) / ROW), LEAST_ROWS), MOST_ROWS);
  const place = Math.max(0, pins.indexOf(at));
  const first = Math.min(
    Math.max(0, place - Math.floor(rows / 2)),
    Math.max(0, pins.length - rows),
  );
  const shown = pins.slice(first, first + rows);
  return (
    <svg
      class="pin-stack"
      viewBox={`0 0 ${WIDTH} ${rows * ROW + 4}`}
      role="img"
      aria-label={`Weight stack, pin at ${labels.get(at) ?? at}`}
    >
      {shown.map((kg, row) => (
        <Row key={kg} y={row * ROW + 2} label={labels.get(kg) ?? ""} pinned={kg === at} />
      ))}
    </svg>
  );
}

interface RowProps {
  readonly y: number;
  readonly label: string;
  readonly pinned: boolean;
}

function Row({ y, label, pinned }: RowProps) {
  const middle = y + (ROW - 4) / 2;
  return (
    <g class={pinned ? "pin-row pinned" : "pin-row"}>
      <rect x="79" y={y} width="200" height={ROW - 4} rx="3" />
      <circle cx="179" cy={middle} r="3.5" />
      <text x="96" y={middle + 6}>
        {label}
      </text>
      {pinned && <path class="pin" d={`M179 ${middle}H316M316 ${middle - 9}v18`} />}
    </g>
  );
}
