import { own } from "../block/faults";
import { FindingList } from "../findings/finding-list";
import { useRemarks, useWriter } from "./writer-state";

/** What was found of the chosen week as a whole. */
export function WeekFindings() {
  const { week } = useWriter().place.value;
  return <FindingList findings={own(useRemarks().findings, `weeks.${week}`, "sessions")} />;
}
