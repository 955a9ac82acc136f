import { useEffect } from "preact/hooks";

import { SECOND_MS } from "../../../offline/clock";
import { countdown } from "../../../offline/clocks";
import { useAnnounce } from "../../device/announce";
import { count } from "../../words/sets";
import { duration } from "../../words/times";
import { PanelFoot } from "../panel-foot";
import { useRecorder } from "../recording";
import type { PanelProps } from "../result-panel";
import { ClockFace } from "./clock-face";
import { Press } from "./press";
import { useRunning } from "./running";
import { Ready } from "./timed-set";

/** Repetitions that are held one by one; the last one's end records the set. */
export function HeldReps({ seconds, ...props }: PanelProps & { readonly seconds: number }) {
  const { here, done } = props;
  const clock = useRunning(here);
  const recorder = useRecorder(here.view.session);
  const announce = useAnnounce();
  const reps = done.reps ?? 1;
  const held = clock.parts.length;
  const state = countdown(seconds, clock.since, clock.now);
  const over = state?.phase === "over";
  const record = (number: number, at?: number) =>
    recorder.done(here.set, { ...done, reps: number, seconds }, at);
  useEffect(() => {
    if (!over || clock.since === null) return;
    const last = held + 1 >= reps;
    announce(last ? 3 : 2, last ? "Hold: done" : `${held + 1} held`);
    if (last) record(held + 1, clock.since + seconds * SECOND_MS);
    else clock.stand(done, [...clock.parts, seconds]);
  }, [over]);
  const start = `Start rep ${held + 1} of ${reps}: ${duration(seconds)}`;
  if (state?.phase === "running") {
    return (
      <>
        <ClockFace
          name="Hold"
          seconds={state.leftS}
          word={`s left, rep ${held + 1} of ${reps}`}
          share={state.share}
        />
        <Press key="stop" onPress={() => clock.stand(done, clock.parts)}>
          Let go: this rep does not count
        </Press>
      </>
    );
  }
  if (held === 0) return <Ready {...props} start={start} onStart={clock.start} />;
  return (
    <>
      <Press key={held} onPress={() => clock.start(done)}>
        {start}
      </Press>
      <button type="button" class="button tall" onClick={() => record(held)}>
        End the set: {count(held, "rep")} held
      </button>
      <PanelFoot {...props} />
    </>
  );
}
