import "./sleeve.css";
import { plateColour } from "./plates";
import {
  COLLAR_MM,
  type DrawnPlate,
  layOut,
  RING_MM,
  SHAFT_MM,
  type SleeveInput,
  type SleeveLayout,
  WIDTH,
} from "./sleeve-layout";

interface Props extends SleeveInput {
  /** How many of the innermost plates hang there already; the others are marked as new. */
  readonly hanging: number;
  readonly collar: boolean;
  /** The same for who cannot see it. */
  readonly name: string;
}

/** One sleeve to scale, from the shaft outwards, with its plates and their numbers. */
export function Sleeve({ hanging, collar, name, ...input }: Props) {
  const layout = layOut(input);
  return (
    <svg class="sleeve" viewBox={`0 0 ${WIDTH} ${layout.height}`} role="img" aria-label={name}>
      <Bar layout={layout} />
      {layout.plates.map((plate, index) => (
        <Plate key={index} plate={plate} layout={layout} fresh={index >= hanging} />
      ))}
      {collar && <Collar layout={layout} />}
      <line
        class="sleeve-axis"
        x1="0"
        x2={layout.sleeveEnd + 14}
        y1={layout.axis}
        y2={layout.axis}
      />
      <Cut height={layout.height} />
    </svg>
  );
}

function Bar({ layout: { scale, axis, sleeveX, sleeveEnd } }: { layout: SleeveLayout }) {
  const box = (x: number, until: number, diameterMm: number) => {
    const half = (diameterMm / 2) * scale;
    return { x, width: until - x, y: axis - half, height: 2 * half };
  };
  const ringX = sleeveX - RING_MM * scale;
  return (
    <g class="sleeve-bar">
      <rect {...box(ringX - SHAFT_MM * scale, ringX, 28)} />
      <rect {...box(ringX, sleeveX, 84)} rx="3" />
      <rect {...box(sleeveX, sleeveEnd, 50)} rx="2" />
    </g>
  );
}

interface PlateProps {
  readonly plate: DrawnPlate;
  readonly layout: SleeveLayout;
  readonly fresh: boolean;
}

function Plate({ plate, layout, fresh }: PlateProps) {
  const { x, width, top, label, labelX, massKg } = plate;
  const middle = x + width / 2;
  const slant = `M${labelX} ${layout.labelY + 6}L${middle} ${layout.highest - 3}`;
  return (
    <g class={`plate plate-${plateColour(massKg)} ${fresh ? "plate-fresh" : ""}`}>
      <rect
        x={x + 0.75}
        y={top}
        width={Math.max(width - 1.5, 1.5)}
        height={layout.height - top}
        rx="3"
      />
      <path class="plate-leader" d={`${slant}V${top - 2}`} />
      <text x={labelX} y={layout.labelY} font-size={layout.labelSize} text-anchor="middle">
        {label}
      </text>
    </g>
  );
}

function Collar({ layout: { scale, axis, stackEnd } }: { layout: SleeveLayout }) {
  const half = 38 * scale;
  return (
    <rect
      class="sleeve-collar"
      x={stackEnd + 1}
      width={COLLAR_MM * scale}
      y={axis - half}
      height={2 * half}
      rx="3"
    />
  );
}

/** The plates go on below: they fade out where the drawing ends. */
function Cut({ height }: { readonly height: number }) {
  return (
    <>
      <defs>
        <linearGradient id="sleeve-cut" x2="0" y2="1">
          <stop class="sleeve-cut-from" offset="0" />
          <stop class="sleeve-cut-to" offset="1" />
        </linearGradient>
      </defs>
      <rect x="0" y={height - 16} width={WIDTH} height="16" fill="url(#sleeve-cut)" />
    </>
  );
}
