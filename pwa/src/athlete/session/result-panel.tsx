import type { SheetExercise, SheetSet } from "../../api/types";
import type { SetDone } from "../../offline/entry";
import { Stepper } from "../../parts/stepper";
import { useApp } from "../app-context";
import { useArmed } from "../device/armed";
import { useUnits } from "../hooks";
import { loadInWords } from "../words/loads";
import { count } from "../words/sets";
import { duration } from "../words/times";
import { fieldsFor, stepField, withField } from "./fields";
import { useRecorder } from "./recording";
import type { SessionView } from "./view";

interface Props {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
  readonly set: SheetSet;
  readonly done: SetDone;
  readonly onChange: (done: SetDone) => void;
  readonly onSkip: () => void;
}

/** The result, filled in with the plan: one tap records it. */
export function ResultPanel({ view, exercise, set, done, onChange, onSkip }: Props) {
  const { router, focus } = useApp();
  const units = useUnits();
  const recorder = useRecorder(view.session);
  const armed = useArmed();
  const correcting = view.session.record.sets.has(set.key);
  return (
    <>
      <div class="fields">
        {fieldsFor(exercise, set).map((field) => (
          <Stepper
            key={field.name}
            label={field.label}
            value={typeof done[field.name] === "number" ? String(done[field.name]) : null}
            atLeast={done[field.name] === field.least}
            atMost={done[field.name] === field.most}
            onStep={(steps) =>
              onChange(withField(done, field.name, stepField(field, done[field.name], steps)))
            }
          />
        ))}
      </div>
      <button
        type="button"
        class="button main record"
        disabled={!armed}
        onClick={() => recorder.done(set, done)}
      >
        {correcting ? "Save: " : "Done: "}
        {doneShort(done, (kg) => loadInWords(exercise, kg, units))}
      </button>
      <div class="panel-foot">
        {correcting ? (
          <button
            type="button"
            class="button quiet"
            onClick={() => {
              focus.value = { ...focus.value, correcting: null };
            }}
          >
            Leave as it was
          </button>
        ) : (
          <button type="button" class="button quiet" onClick={onSkip}>
            Skip this set
          </button>
        )}
        {correcting ? (
          <button type="button" class="button quiet" onClick={() => recorder.undo(set)}>
            Not done
          </button>
        ) : (
          <button type="button" class="button quiet" onClick={() => router.go("/sets")}>
            All sets
          </button>
        )}
      </div>
    </>
  );
}

/** "5 reps at 92.5 kg" */
export function doneShort(done: SetDone, inMass: (kg: number) => string): string {
  const what = [
    typeof done.seconds === "number" ? duration(done.seconds) : "",
    typeof done.distance_m === "number" ? `${done.distance_m} m` : "",
    typeof done.reps === "number" ? count(done.reps, "rep") : "",
  ].filter((part) => part !== "");
  const load = typeof done.load_kg === "number" ? ` at ${inMass(done.load_kg)}` : "";
  return (what.join(", ") || "set") + load;
}
