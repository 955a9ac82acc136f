import type { WorkWeek } from "../answers";
import { work } from "../desk";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { AdherencePlot } from "./adherence-plot";
import { HardSets } from "./hard-sets";
import { LimbWear } from "./limb-wear";
import type { Asked } from "./monitoring-part";
import { TonnagePlot } from "./tonnage-plot";

export interface WorkSeen extends Asked {
  readonly found: readonly WorkWeek[];
}

/** What was asked for, what became of it, and how much it was. */
export function WorkSections({ id, weeks }: Asked) {
  const load = useLoad(`work ${id} ${weeks}`, () => work(id, weeks));
  return (
    <section>
      <h2>Planned and done</h2>
      <Loaded load={load} what="the work of these weeks">
        {(found) =>
          found.length === 0 ? (
            <p class="lead">Nothing was planned for these weeks, so nothing can have been done.</p>
          ) : (
            <Work id={id} weeks={weeks} found={found} />
          )
        }
      </Loaded>
    </section>
  );
}

function Work(seen: WorkSeen) {
  return (
    <>
      <AdherencePlot {...seen} />
      <HardSets {...seen} />
      <TonnagePlot {...seen} />
      <LimbWear {...seen} />
    </>
  );
}
