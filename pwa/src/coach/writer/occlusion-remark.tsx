import type { SheetExercise } from "../../api/types";
import { calendarDate } from "../shell/when";
import { minutes } from "../results/occlusion-words";

/** What the load sheet predicts of the wear, and the exposure that the athlete has come to. */
export function OcclusionRemark({ sheet }: { readonly sheet: SheetExercise }) {
  const known = sheet.occlusion;
  if (!known) return null;
  const most =
    known.most_tightness === undefined ? "" : ` Tightness at most ${known.most_tightness} of 10.`;
  const pressure =
    known.pressure_mmhg === undefined
      ? ""
      : ` ${known.pressure_mmhg} mmHg, ${known.pressure_basis}.`;
  const until = known.until === undefined ? "" : ` Open until ${calendarDate(known.until)}.`;
  return (
    <>
      <li>
        <b>Worn:</b> about {minutes(known.wear_s)}, off by {minutes(known.limit_s)}; then off for at
        least {minutes(known.break_s)}.{most}
        {pressure}
        {until}
        {known.company && <span class="caution"> Only with somebody there.</span>}
      </li>
      <li>
        <b>Allowed at</b> {known.rung}.
      </li>
    </>
  );
}
