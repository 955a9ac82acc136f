import { SECOND_MS } from "../../../offline/clock";
import { elapsedMs, LONGEST_MS } from "../../../offline/clocks";
import { useApp } from "../../app-context";
import { useRecorder } from "../recording";
import { type PanelProps, ResultPanel } from "../result-panel";
import { ClockFace } from "./clock-face";
import { Press } from "./press";
import { useRunning } from "./running";
import { Ready, TimedSet } from "./timed-set";

const WORDS = { clock: "Work", start: "Start the clock", stop: "Stop here" };

/** Work for a time counts down; work over a distance is timed. */
export function TimedPanel(props: PanelProps) {
  const { here, done } = props;
  if (here.answer) return <ResultPanel {...props} />;
  const { seconds } = here.set.target;
  if (seconds) return <TimedSet {...props} seconds={done.seconds ?? seconds} words={WORDS} />;
  return <Stopwatch {...props} />;
}

function Stopwatch(props: PanelProps) {
  const { here, done } = props;
  const { phone } = useApp();
  const clock = useRunning(here);
  const recorder = useRecorder(here.view.session);
  const elapsed = clock.since === null ? null : elapsedMs(clock.since, clock.now);
  if (clock.since === null || elapsed === null || elapsed > LONGEST_MS) {
    return (
      <Ready
        {...props}
        start="Start the stopwatch"
        onStart={clock.start}
        lost={clock.since !== null}
      />
    );
  }
  const { since } = clock;
  const far = done.distance_m === undefined ? "" : `: ${done.distance_m} m`;
  return (
    <>
      <ClockFace name="Stopwatch" seconds={Math.floor(elapsed / SECOND_MS)} word="s" />
      <Press
        key="stop"
        onPress={() =>
          recorder.done(here.set, { ...done, seconds: timed(phone.times().steady - since) })
        }
      >
        Stop{far}
      </Press>
    </>
  );
}

/** To a tenth of a second below a minute, to a second from there on. */
export function timed(ms: number): number {
  const step = ms < 60 * SECOND_MS ? 10 : 1;
  return Math.max(0, Math.round((ms / SECOND_MS) * step) / step);
}
