import { useState } from "preact/hooks";

import { ChoiceField } from "../fields/choice-field";
import { ConditionSection } from "./condition-section";
import { LoadSection } from "./load-section";
import { SpeedSection } from "./speed-section";
import { WorkSections } from "./work-sections";

const SPANS: Readonly<Record<string, string>> = {
  "6": "6 weeks",
  "12": "12 weeks",
  "26": "26 weeks",
  "52": "52 weeks",
};

/** What the monitoring asks the server for. */
export interface Asked {
  readonly id: string;
  readonly weeks: number;
}

/** What done work adds up to, week by week. */
export function MonitoringPart({ id }: { readonly id: string }) {
  const [weeks, setWeeks] = useState(12);
  return (
    <>
      <ChoiceField
        label="Look back"
        choices={SPANS}
        value={String(weeks)}
        onValue={(value) => setWeeks(Number(value))}
      />
      <LoadSection id={id} weeks={weeks} />
      <WorkSections id={id} weeks={weeks} />
      <SpeedSection id={id} weeks={weeks} />
      <ConditionSection id={id} weeks={weeks} />
    </>
  );
}
