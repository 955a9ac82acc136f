import "./force-curve.css";
import { CURVE_HEIGHT, CURVE_WIDTH, curveLine, forceAt } from "./curve-line";
import { type Curve, curveInWords, drawn, type Lift, type Reading } from "./curve-words";

interface Props {
  readonly curve: Curve;
  readonly lift: Lift;
  readonly reading: Reading;
}

/** Resistance from the start of a lift to its end: the numbers say it, the line shows its shape. */
export function ForceCurve({ curve, lift, reading }: Props) {
  const { caption, figures, picture } = curveInWords(curve, lift, reading);
  return (
    <figure class="force-curve">
      <figcaption>{caption}</figcaption>
      <Line curve={curve} name={picture} {...(lift.heldAt !== undefined && { at: lift.heldAt })} />
      <dl>
        {figures.map(({ label, figure }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
    </figure>
  );
}

interface LineProps {
  readonly curve: Curve;
  readonly name: string;
  readonly at?: number;
}

/** The dashes are the average; where the lift is held, a ring instead. */
function Line({ curve, name, at }: LineProps) {
  const points = drawn(curve);
  const { path, x, y } = curveLine(points);
  const dot = (position: number) => `M${x(position)} ${y(forceAt(points, position))}h0`;
  return (
    <svg
      viewBox={`0 0 ${CURVE_WIDTH} ${CURVE_HEIGHT}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={name}
    >
      {at === undefined && <path class="curve-mean" d={`M${x(0)} ${y(curve.mean_kg)}H${x(1)}`} />}
      <path class="curve-line" d={path} />
      <path class="curve-dot" d={dot(0) + dot(1)} />
      {at !== undefined && <path class="curve-held" d={dot(at)} />}
    </svg>
  );
}
