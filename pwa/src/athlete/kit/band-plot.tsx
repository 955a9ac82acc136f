import type { Reading } from "./band-readings";

const WIDTH = 358;
const HEIGHT = 132;
const PAD = 10;

interface Props {
  readonly restCm: number;
  readonly readings: readonly Reading[];
}

/** The pull over the length, from rest through each reading as it comes in. */
export function BandPlot({ restCm, readings }: Props) {
  const points = [{ cm: restCm, tenths: 0 }, ...readings];
  const longest = Math.max(...points.map(({ cm }) => cm), restCm + 1);
  const most = Math.max(...points.map(({ tenths }) => tenths), 1);
  const x = (cm: number) => PAD + ((cm - restCm) / (longest - restCm)) * (WIDTH - 2 * PAD);
  const y = (tenths: number) => HEIGHT - PAD - (tenths / most) * (HEIGHT - 2 * PAD);
  const path = points.map(({ cm, tenths }) => `${x(cm)} ${y(tenths)}`).join("L");
  return (
    <figure class="trend">
      <svg class="plot" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <path class="plot-line" d={`M${path}`} />
        {points.map(({ cm, tenths }) => (
          <circle key={cm} class="plot-now" cx={x(cm)} cy={y(tenths)} r="6" />
        ))}
      </svg>
      <figcaption class="facts">
        {restCm} cm at rest
        <span>{readings.length > 0 && `${longest} cm, ${(most / 10).toFixed(1)} kg`}</span>
      </figcaption>
    </figure>
  );
}
