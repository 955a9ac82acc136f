import type { Finding } from "../answers";
import { FaultWords } from "../shell/states";
import { countsOf, setsInWords, toldOnce, topicOf } from "./findings";
import { SEVERITY_WORDS, SeverityMark } from "./severity-mark";

interface FindingListProps {
  readonly findings: readonly Finding[];
  /** The list stands beside a line of so many sets: the sets are told where not all are meant. */
  readonly sets?: number;
  /** The list stands away from the text: each place is told in full. */
  readonly placed?: boolean;
}

/** Findings beside what they speak of: how grave, what, and the mend. Stops come first. */
export function FindingList({ findings, sets = 0, placed = false }: FindingListProps) {
  if (findings.length === 0) return null;
  return (
    <ul class="findings">
      {toldOnce(findings).map((finding) => {
        const topic = topicOf(finding);
        const place = placed ? finding.where : setsInWords(findings, topic, sets);
        return (
          <li key={topic} class={finding.severity} data-finding={topic} tabIndex={-1}>
            <SeverityMark severity={finding.severity} />
            <span>
              <b class="severity">{SEVERITY_WORDS[finding.severity]}</b>
              {place && <span class="finding-place"> {place}:</span>} <FaultWords fault={finding} />
            </span>
          </li>
        );
      })}
    </ul>
  );
}

/** How many, as marks with figures, where there is no room for words. */
export function FindingMarks({ findings }: { readonly findings: readonly Finding[] }) {
  const { stops, others } = countsOf(findings);
  return (
    <>
      {stops > 0 && (
        <span class="finding-count stop">
          <SeverityMark severity="stop" />
          {stops}
          <span class="sr-only"> {stops === 1 ? "stop" : "stops"}</span>
        </span>
      )}
      {others > 0 && (
        <span class="finding-count">
          <SeverityMark severity="warn" />
          {others}
          <span class="sr-only"> to look at</span>
        </span>
      )}
    </>
  );
}
