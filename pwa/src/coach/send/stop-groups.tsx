import type { ComponentChildren } from "preact";

import type { Finding } from "../answers";
import { SeverityMark } from "../findings/severity-mark";
import { FaultWords } from "../shell/states";
import { groupsOf, wordingsOf, type StopGroup, type Wording } from "./stops";

interface StopGroupsProps {
  readonly stops: readonly Finding[];
  /** What stands beneath the stops of one check. */
  readonly beneath?: (group: StopGroup) => ComponentChildren;
}

/** Stops away from the text, those of one check together: what, the mend, and all the places. */
export function StopGroups({ stops, beneath }: StopGroupsProps) {
  return (
    <>
      {groupsOf(stops).map((group) => (
        <div class="stop-group" key={`${group.check} ${group.mayOverrule}`}>
          <ul class="findings">
            {wordingsOf(group.stops).map((wording) => (
              <Worded key={`${wording.said.what} ${wording.said.right}`} wording={wording} />
            ))}
          </ul>
          {beneath?.(group)}
        </div>
      ))}
    </>
  );
}

const MOST_PLACES = 4;

function Worded({ wording: { said, places } }: { readonly wording: Wording }) {
  const [shown, rest] = [places.slice(0, MOST_PLACES), places.slice(MOST_PLACES)];
  return (
    <li class="stop">
      <SeverityMark severity="stop" />
      <div>
        <b class="severity">stop</b> <FaultWords fault={said} />
        <Places places={shown} />
        {rest.length > 0 && (
          <details class="places">
            <summary>and {rest.length} more</summary>
            <Places places={rest} />
          </details>
        )}
      </div>
    </li>
  );
}

function Places({ places }: { readonly places: readonly string[] }) {
  const told = places.filter(Boolean);
  if (told.length === 0) return null;
  return (
    <ul class="places">
      {told.map((place) => (
        <li key={place}>{place}</li>
      ))}
    </ul>
  );
}
