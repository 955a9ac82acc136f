import type { Condition } from "../answers";
import { condition } from "../desk";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { MassPlot } from "./mass-plot";
import type { Asked } from "./monitoring-part";
import { PainPlot } from "./pain-plot";
import { ReadinessPlot } from "./readiness-plot";

export interface ConditionSeen extends Asked {
  readonly found: Condition;
}

/** How the athlete says they are. */
export function ConditionSection({ id, weeks }: Asked) {
  const load = useLoad(`condition ${id} ${weeks}`, () => condition(id, weeks));
  return (
    <section>
      <h2>Pain, readiness, body mass</h2>
      <Loaded load={load} what="what the athlete reported">
        {(found) => (
          <>
            <PainPlot id={id} weeks={weeks} found={found} />
            <ReadinessPlot id={id} weeks={weeks} found={found} />
            <MassPlot id={id} weeks={weeks} found={found} />
          </>
        )}
      </Loaded>
    </section>
  );
}
