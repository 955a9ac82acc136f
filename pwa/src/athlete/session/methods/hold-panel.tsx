import { type PanelProps, ResultPanel } from "../result-panel";
import { rule } from "./details";
import { HeldReps } from "./held-reps";
import { TimedSet } from "./timed-set";

const WORDS = { clock: "Hold", start: "Start the hold", stop: "Let go now" };

/** A hold: its clock counts down and records what was held. */
export function HoldPanel(props: PanelProps) {
  const { here, done } = props;
  if (here.answer || typeof done.seconds !== "number") return <ResultPanel {...props} />;
  if (rule(here.exercise, "per_rep")?.per_rep)
    return <HeldReps {...props} seconds={done.seconds} />;
  return <TimedSet {...props} seconds={done.seconds} words={WORDS} />;
}
