import { useId } from "preact/hooks";

import { Hatches, lookOf, type Look } from "./looks";
import type { LineLook } from "./line-plot";

interface LegendItem {
  readonly name: string;
  readonly look: Look | LineLook | "peak";
}

/** What the fillings and lines of a plot stand for. */
export function Legend({ items }: { readonly items: readonly LegendItem[] }) {
  return (
    <ul class="legend">
      {items.map(({ name, look }) => (
        <li key={name}>
          <Swatch look={look} /> {name}
        </li>
      ))}
    </ul>
  );
}

function Swatch({ look }: Pick<LegendItem, "look">) {
  const id = useId();
  return (
    <svg class="plot-swatch" width="26" height="12" viewBox="0 0 26 12" aria-hidden="true">
      {look === "peak" ? (
        <path class="plot-peak" d="M1 6h24" />
      ) : look === "solid" || look === "dashed" ? (
        <path class={`plot-line look-${look}`} d="M1 6h24" />
      ) : look === "dots" ? (
        <circle class="point" cx="13" cy="6" r="4" />
      ) : (
        <>
          <Hatches id={id} looks={[look]} />
          <rect
            class={`plot-bar look-${look}`}
            fill={lookOf(id, look)}
            x="1"
            y="1"
            width="24"
            height="10"
          />
        </>
      )}
    </svg>
  );
}
