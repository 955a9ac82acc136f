import { NoAnswer } from "../../api/client";
import { countsInWords, countsOf } from "../findings/findings";
import { counted } from "../shell/counted";
import { Failure } from "../shell/states";
import type { Loads } from "./use-loads";

/** How far the loads beside the text have come. */
export function LoadsState({ loads }: { readonly loads: Loads }) {
  const faults = loads.answer?.faults.length ?? 0;
  const found = countsInWords(countsOf(loads.answer?.findings ?? []));
  if (loads.state === "failed" && !(loads.fault instanceof NoAnswer)) {
    return <Failure fault={loads.fault} what="loads" />;
  }
  const words = {
    off: "",
    failed: "the loads come back with the server",
    working: "working out the loads …",
    ready: faults > 0 ? counted(faults, "fault") : found ? "" : "nothing found",
  }[loads.state];
  return (
    <span class="soft" role="status">
      {words}
      {loads.state === "ready" && <span class="sr-only">{found}</span>}
    </span>
  );
}
