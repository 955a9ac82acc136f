import { useUnits } from "../../hooks";
import { loadInWords } from "../../words/loads";
import { mass } from "../../words/mass";
import { PanelFoot } from "../panel-foot";
import { useRecorder } from "../recording";
import { type PanelProps, ResultPanel } from "../result-panel";
import { rule } from "./details";
import { Press } from "./press";
import { bestAttempt } from "./tested";

/** An attempt: its load from the card, made or missed. A repetition maximum is told by its reps. */
export function TestPanel(props: PanelProps) {
  const reps = rule(props.here.exercise, "attempts")?.reps ?? 1;
  return reps > 1 ? <ResultPanel {...props} /> : <Attempt {...props} />;
}

function Attempt(props: PanelProps) {
  const { here, done } = props;
  const units = useUnits();
  const recorder = useRecorder(here.view.session);
  const what = done.load_kg === null ? "" : `: ${loadInWords(here.exercise, done.load_kg, units)}`;
  const tell = (reps: number) => recorder.done(here.set, { ...done, reps });
  return (
    <>
      <div class="attempt">
        <Press onPress={() => tell(1)}>Made{what}</Press>
        <button type="button" class="button record" onClick={() => tell(0)}>
          Missed
        </button>
      </div>
      {!here.answer && <EndTest {...props} />}
      <PanelFoot {...props} />
    </>
  );
}

/** Nobody has to use up all attempts. */
function EndTest({ here }: PanelProps) {
  const { view, exercise } = here;
  const units = useUnits();
  const recorder = useRecorder(view.session);
  const best = bestAttempt(exercise, view.session.record);
  if (best === null) return null;
  const open = exercise.sets.filter(({ key }) => !view.session.record.sets.has(key));
  return (
    <button
      type="button"
      class="button tall"
      onClick={() => recorder.skipAll(open, "the test ended with the attempt before")}
    >
      End the test: {mass(best, units)} is my best
    </button>
  );
}
