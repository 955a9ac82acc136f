import { useState } from "preact/hooks";

import type { SetDone } from "../../../offline/entry";
import { useApp } from "../../app-context";
import { useArmed } from "../../device/armed";
import { usePhoneState } from "../../hooks";
import { PanelFoot } from "../panel-foot";
import { useRecorder } from "../recording";
import { DoneButton, Fields, type PanelProps } from "../result-panel";
import { stopCall } from "./stop-rule";
import { StopStrip } from "./stop-strip";
import { VelocityFields } from "./velocity-fields";

/** A speed set: told by the velocity of its reps or by its quality, whichever the athlete has. */
export function SpeedPanel(props: PanelProps) {
  const { settings } = usePhoneState();
  const measured = props.here.answer
    ? props.done.velocities_m_s !== undefined
    : settings.speed === "velocity";
  const [going, setGoing] = useState(false);
  const call = stopCall(props.here.exercise, props.here.view.answered);
  const stop = call && !going && !props.here.answer;
  return (
    <>
      {stop && <StopStrip here={props.here} call={call} onGoOn={() => setGoing(true)} />}
      {!stop && (measured ? <Measured {...props} /> : <Rated {...props} />)}
      <PanelFoot {...props}>{!stop && <OtherWay measured={measured} />}</PanelFoot>
    </>
  );
}

function Measured(props: PanelProps) {
  return (
    <>
      <VelocityFields {...props} />
      <div class="pair">
        <Fields {...props} only="reps" />
        <DoneButton {...props} />
      </div>
    </>
  );
}

const QUALITIES = [1, 2, 3, 4, 5] as const;

/** One tap on a quality records the set with it. */
function Rated(props: PanelProps) {
  const { here, done } = props;
  const recorder = useRecorder(here.view.session);
  const armed = useArmed();
  const rated = (quality: number): SetDone => ({ ...done, quality });
  return (
    <>
      <div class="pair">
        <Fields {...props} only="reps" />
        <DoneButton {...props} second />
      </div>
      <div class="quality" role="group" aria-label="Done: how fast was it, 1 slow to 5 fast?">
        {QUALITIES.map((quality) => (
          <button
            key={quality}
            type="button"
            class="button"
            disabled={!armed}
            aria-label={`Quality ${quality} of 5`}
            aria-pressed={here.answer ? done.quality === quality : undefined}
            onClick={() => recorder.done(here.set, rated(quality))}
          >
            {quality}
          </button>
        ))}
      </div>
      <p class="quality-word" aria-hidden="true">
        <span>slow</span>
        <span>done: tap its quality</span>
        <span>fast</span>
      </p>
    </>
  );
}

function OtherWay({ measured }: { readonly measured: boolean }) {
  const { phone } = useApp();
  return (
    <button
      type="button"
      class="button quiet"
      onClick={() => void phone.saveSettings({ speed: measured ? "quality" : "velocity" })}
    >
      {measured ? "Quality" : "Velocity"} instead
    </button>
  );
}
