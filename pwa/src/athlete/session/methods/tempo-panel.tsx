import { PanelFoot } from "../panel-foot";
import { DoneButton, Fields, type PanelProps } from "../result-panel";
import { Beat } from "./beat";
import { rule } from "./details";

/** A set in a tempo, with a beat to it where the athlete wants one. */
export function TempoPanel(props: PanelProps) {
  const { here } = props;
  const tempo = rule(here.exercise, "lowering_s");
  return (
    <>
      <div class="pair">
        <Fields {...props} />
        {tempo && !here.answer && <Beat here={here} done={props.done} tempo={tempo} />}
      </div>
      <DoneButton {...props} />
      <PanelFoot {...props} />
    </>
  );
}
