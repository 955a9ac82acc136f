import { useEffect } from "preact/hooks";

import { SECOND_MS } from "../../../offline/clock";
import { countdown } from "../../../offline/clocks";
import { useAnnounce } from "../../device/announce";
import { duration } from "../../words/times";
import { PanelFoot } from "../panel-foot";
import { useRecorder } from "../recording";
import { DoneButton, Fields, type PanelProps } from "../result-panel";
import { ClockFace } from "./clock-face";
import { Press } from "./press";
import { useRunning } from "./running";

interface Props extends PanelProps {
  readonly seconds: number;
  readonly words: { readonly clock: string; readonly start: string; readonly stop: string };
}

/** A set that a countdown records at its end, with no tap in between. */
export function TimedSet({ seconds, words, ...props }: Props) {
  const { here, done } = props;
  const clock = useRunning(here);
  const state = countdown(seconds, clock.since, clock.now);
  const recorder = useRecorder(here.view.session);
  const announce = useAnnounce();
  const over = state?.phase === "over";
  useEffect(() => {
    if (!over || clock.since === null) return;
    announce(3, `${words.clock}: done`);
    recorder.done(here.set, { ...done, seconds }, clock.since + seconds * SECOND_MS);
  }, [over]);
  if (!state || state.phase === "forgotten") {
    return (
      <Ready
        {...props}
        start={`${words.start}: ${duration(seconds)}`}
        onStart={clock.start}
        lost={clock.since !== null}
      />
    );
  }
  return (
    <>
      <ClockFace
        name={words.clock}
        seconds={state.leftS}
        word={`s left of ${duration(seconds)}`}
        share={state.share}
      />
      <Press
        key="stop"
        onPress={() => recorder.done(here.set, { ...done, seconds: state.elapsedS })}
      >
        {words.stop}
      </Press>
    </>
  );
}

interface ReadyProps extends PanelProps {
  readonly start: string;
  readonly onStart: (done: PanelProps["done"]) => void;
  /** A clock was started, and nobody knows any more how long it ran. */
  readonly lost?: boolean;
}

/** Before the clock: start it, or record without it. */
export function Ready({ start, onStart, lost = false, ...props }: ReadyProps) {
  return (
    <>
      {lost && (
        <p class="note">How long the last clock ran is not known. Start again, or record.</p>
      )}
      <Fields {...props} />
      <Press key="start" onPress={() => onStart(props.done)}>
        {start}
      </Press>
      <DoneButton {...props} second />
      <PanelFoot {...props} />
    </>
  );
}
