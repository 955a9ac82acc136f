import type { PieceProps } from "./screening-part";

const LIMBS: Readonly<Record<string, string>> = { "upper-arm": "Arms", thigh: "Legs" };

/** The next exposure of arms and of legs, and what it may hold. */
export function ExposurePart({ page }: Pick<PieceProps, "page">) {
  return (
    <section>
      <h2>The next exposure, if it came today</h2>
      <dl class="exposures">
        {page.exposures.map(({ limb, rung }) => (
          <div key={limb}>
            <dt>{LIMBS[limb] ?? limb}</dt>
            <dd>{rung}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
