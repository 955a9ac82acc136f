import type { ScreeningReason } from "../answers";
import { OutcomeMark } from "./outcome-mark";
import { needsClinician } from "./outcomes";
import type { PieceProps } from "./screening-part";

/** Each reason with what opens it; those that close nothing any more stay in sight. */
export function ReasonsPart({ page }: Pick<PieceProps, "page">) {
  const closing = page.reasons.filter((reason) => !reason.covered);
  const settled = page.reasons.filter((reason) => reason.covered);
  if (page.reasons.length === 0) return null;
  return (
    <section>
      <h2>{closing.length > 0 ? "What closes it, and what opens it" : "Nothing closes it"}</h2>
      {closing.some((reason) => needsClinician(reason.outcome)) && <NotAlone />}
      <Reasons reasons={closing} />
      {settled.length > 0 && (
        <details>
          <summary>Cleared by a clinician, or weighed with your note ({settled.length})</summary>
          <Reasons reasons={settled} />
        </details>
      )}
    </section>
  );
}

function NotAlone() {
  return (
    <p class="aside-note">
      You alone cannot open what says “doctor first”, “for the clinic” or “locked”; your signature
      does not either. That takes the word of a licensed clinician, recorded below. Local rules and
      licensed practice come first.
    </p>
  );
}

function Reasons({ reasons }: { readonly reasons: readonly ScreeningReason[] }) {
  return (
    <ul class="plain-list reasons">
      {reasons.map((reason) => (
        <li key={`${reason.key} ${reason.words}`}>
          <OutcomeMark outcome={reason.outcome} />
          <div>
            {reason.words}
            {reason.covered ? null : <span class="mend">What opens it: {reason.opens}</span>}
          </div>
        </li>
      ))}
    </ul>
  );
}
