import type { ComponentChildren } from "preact";

import type { SetDone } from "../../offline/entry";
import { Stepper } from "../../parts/stepper";
import { useArmed } from "../device/armed";
import { useUnits } from "../hooks";
import { atLoad, loadInWords } from "../words/loads";
import { count } from "../words/sets";
import { duration } from "../words/times";
import type { AtHand } from "./at-hand";
import { type FieldName, fieldsFor, stepField, withField } from "./fields";
import { PanelFoot } from "./panel-foot";
import { useRecorder } from "./recording";

export interface PanelProps {
  readonly here: AtHand;
  readonly done: SetDone;
  readonly onChange: (done: SetDone) => void;
  readonly onSkip: () => void;
}

/** The result, filled in with the plan: one tap records it. */
export function ResultPanel(props: PanelProps) {
  return (
    <>
      <Fields {...props} />
      <DoneButton {...props} />
      <PanelFoot {...props} />
    </>
  );
}

interface FieldsProps extends PanelProps {
  readonly only?: FieldName;
}

export function Fields({ here, done, onChange, only }: FieldsProps) {
  const fields = fieldsFor(here.exercise, here.set);
  return (
    <div class="fields">
      {fields
        .filter(({ name }) => !only || name === only)
        .map((field) => (
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
  );
}

interface ButtonProps extends PanelProps {
  /** In place of "Done: 5 reps at 92.5 kg". */
  readonly children?: ComponentChildren;
  /** Beside another main button. */
  readonly second?: boolean;
}

/** Records the set as it stands. */
export function DoneButton({ here, done, children, second = false }: ButtonProps) {
  const units = useUnits();
  const recorder = useRecorder(here.view.session);
  const armed = useArmed();
  const { exercise, set, side, answer } = here;
  return (
    <button
      type="button"
      class={second ? "button record" : "button main record"}
      disabled={!armed}
      onClick={() => recorder.done(set, done)}
    >
      {children ?? (
        <>
          {answer ? "Save" : "Done"}
          {side && `, ${side}`}: {doneShort(done, (kg) => loadInWords(exercise, kg, units))}
        </>
      )}
    </button>
  );
}

/** "5 reps at 92.5 kg" */
function doneShort(done: SetDone, inMass: (kg: number) => string): string {
  const what = [
    typeof done.reps === "number" ? count(done.reps, "rep") : "",
    typeof done.distance_m === "number" ? `${done.distance_m} m` : "",
    typeof done.seconds === "number" ? duration(done.seconds) : "",
  ].filter((part) => part !== "");
  const load = typeof done.load_kg === "number" ? atLoad(inMass(done.load_kg)) : "";
  return (what.join(", ") || "set") + load;
}
