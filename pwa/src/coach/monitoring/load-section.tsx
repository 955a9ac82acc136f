import type { LoadSeen } from "../answers";
import { sessionLoad } from "../desk";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { calendarDate } from "../shell/when";
import type { Asked } from "./monitoring-part";
import { WeekLoads } from "./week-loads";
import { WeightedLoads } from "./weighted-loads";

/** How hard the weeks were, by the athlete's own rating. */
export function LoadSection({ id, weeks }: Asked) {
  const load = useLoad(`load ${id} ${weeks}`, () => sessionLoad(id, weeks));
  return (
    <section>
      <h2>Session load</h2>
      <p class="aside-note">
        The athlete’s rating of a session (RPE, 0–10) times its minutes, in arbitrary units (au). A
        day of rest counts as 0.
      </p>
      <Loaded load={load} what="the session load">
        {(seen) => <Loads seen={seen} id={id} weeks={weeks} />}
      </Loaded>
    </section>
  );
}

function Loads({ seen, ...asked }: Asked & { readonly seen: LoadSeen }) {
  if (seen.weeks.length === 0) {
    return (
      <p class="lead">
        No session was begun in these weeks. The load grows with each one that the athlete finishes
        and rates.
      </p>
    );
  }
  return (
    <>
      <Silence seen={seen} />
      <WeekLoads seen={seen} {...asked} />
      <WeightedLoads seen={seen} {...asked} />
    </>
  );
}

/** What is not known yet looks like rest. */
function Silence({ seen: { heard_through: through, days } }: { readonly seen: LoadSeen }) {
  const last = days.at(-2);
  if (!last || (through !== null && through >= last.on)) return null;
  return (
    <p>
      {through === null
        ? "No phone was heard yet; "
        : `Not everything is known of the days after ${calendarDate(through)}; `}
      what no phone has told of counts as rest.
    </p>
  );
}
