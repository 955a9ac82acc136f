import "./dumbbells.css";

interface Props {
  readonly pair: boolean;
  /** The number on each. */
  readonly label: string;
}

/** One dumbbell, or two alike. */
export function Dumbbells({ pair, label }: Props) {
  const name = pair ? `Two dumbbells of ${label}` : `One dumbbell of ${label}`;
  return (
    <svg
      class="dumbbells"
      viewBox={pair ? "0 0 358 150" : "84 20 190 110"}
      role="img"
      aria-label={name}
    >
      {pair ? (
        <>
          <Dumbbell x={4} label={label} />
          <Dumbbell x={184} label={label} />
        </>
      ) : (
        <Dumbbell x={94} label={label} />
      )}
    </svg>
  );
}

function Dumbbell({ x, label }: { readonly x: number; readonly label: string }) {
  return (
    <g transform={`translate(${x} 30)`}>
      <rect class="dumbbell-grip" x="52" y="36" width="66" height="18" rx="4" />
      {[0, 112].map((headX) => (
        <g key={headX}>
          <path class="dumbbell-head" d={`M${headX + 12} 0h34l12 14v62l-12 14h-34l-12-14v-62z`} />
          <text x={headX + 29} y="54" text-anchor="middle">
            {label}
          </text>
        </g>
      ))}
    </g>
  );
}
