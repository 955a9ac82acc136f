/** How parts of a plot are told apart: by filling and outline, never by colour alone. */

export type Look = "full" | "hatched" | "hollow" | "dotted";

interface HatchesProps {
  readonly id: string;
  readonly looks: readonly Look[];
}

/** The fillings that are drawn, under names that no other plot on the page has. */
export function Hatches({ id, looks }: HatchesProps) {
  return (
    <defs>
      {looks.includes("hatched") && (
        <pattern id={nameOf(id, "hatched")} width="6" height="6" patternUnits="userSpaceOnUse">
          <path class="hatch" d="M-1 7 7 -1M-1 1 1 -1M5 7 7 5" />
        </pattern>
      )}
      {looks.includes("dotted") && (
        <pattern id={nameOf(id, "dotted")} width="6" height="6" patternUnits="userSpaceOnUse">
          <circle class="hatch-dot" cx="3" cy="3" r="1.2" />
        </pattern>
      )}
    </defs>
  );
}

/** What `fill` says for a look; the full and the hollow one are left to the stylesheet. */
export function lookOf(id: string, look: Look): string | undefined {
  return look === "hatched" || look === "dotted" ? `url(#${nameOf(id, look)})` : undefined;
}

function nameOf(id: string, look: Look): string {
  return `${id}-${look}`;
}
