import { useId } from "preact/hooks";

import type { Refusal } from "../answers";
import { TextField } from "../fields/text-field";
import { counted } from "../shell/counted";
import { Link } from "../shell/link";
import { athletePath } from "../shell/route";
import { StopGroups } from "./stop-groups";
import { isFinal, LONGEST_REASON, reasonKey, type Reasons, type StopGroup } from "./stops";

interface RefusalPartProps {
  readonly refusal: Refusal;
  readonly name: string;
  readonly reasons: Reasons;
  readonly onReason: (key: string, reason: string) => void;
}

/** What stands in the way for one athlete, with a place to set it aside in writing. */
export function RefusalPart({ refusal, name, reasons, onReason }: RefusalPartProps) {
  const { athlete, stops } = refusal;
  const heading = useId();
  const final = isFinal(refusal);
  const beneath = (group: StopGroup) => {
    if (!group.mayOverrule) {
      return <p class="final">Nobody can overrule this: it has to be mended.</p>;
    }
    if (final) return null;
    const key = reasonKey(athlete, group.check);
    const all = group.stops.length === 1 ? "" : ` (one reason for all ${group.stops.length})`;
    return (
      <div class="reason">
        <TextField
          label={`Send all the same, because …${all}`}
          width="full"
          longest={LONGEST_REASON}
          value={reasons[key] ?? ""}
          onValue={(reason) => onReason(key, reason)}
        />
      </div>
    );
  };
  return (
    <section class="refusal" aria-labelledby={heading}>
      <h3 id={heading}>
        {name} <small>{counted(stops.length, "stop")}</small>
      </h3>
      <StopGroups stops={stops} beneath={beneath} />
      <p class="aside-note">
        {final && "With a stop that nobody can overrule, the others need no reason yet. "}
        Look at <Link to={athletePath(athlete, "kit")}>the kit</Link> or{" "}
        <Link to={athletePath(athlete, "person")}>the person and the maxima</Link>.
      </p>
    </section>
  );
}
