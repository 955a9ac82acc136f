import type { Issue } from "../answers";
import { SEVERITY_WORDS, SeverityMark } from "./severity-mark";

/** What is to be said of work that was done: how grave, what, and what would be right. */
export function IssueList({ issues }: { readonly issues: readonly Issue[] }) {
  if (issues.length === 0) return null;
  return (
    <ul class="findings">
      {issues.map(({ severity, what, right }) => (
        <li key={`${what} ${right}`} class={severity}>
          <SeverityMark severity={severity} />
          <span>
            <b class="severity">{SEVERITY_WORDS[severity]}</b> {what}
            <span class="mend">; {right}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}
