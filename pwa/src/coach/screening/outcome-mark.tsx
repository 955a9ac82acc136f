import type { Outcome } from "../answers";
import { SeverityMark } from "../findings/severity-mark";
import { markOf, OUTCOME_WORDS } from "./outcomes";

/** Where something leads: a shape, and the word beside it. */
export function OutcomeMark({ outcome }: { readonly outcome: Outcome }) {
  return (
    <span class={`outcome-mark ${markOf(outcome)}`}>
      <SeverityMark severity={markOf(outcome)} />
      <b>{OUTCOME_WORDS[outcome]}</b>
    </span>
  );
}
