import { useId, useState } from "preact/hooks";

import type { CatalogueEntry } from "../answers";
import { useDesk } from "../shell/desk-state";
import { Field, faultProps, type FieldLook } from "./field";

const LIST = "catalogue-names";

/** The names that the browser proposes while an exercise is typed; stands once in the page. */
export function CatalogueNames() {
  const desk = useDesk();
  return (
    <datalist id={LIST}>
      {desk.exercises.value
        .filter((exercise) => !exercise.archived)
        .map((exercise) => (
          <option key={exercise.key}>{exercise.name}</option>
        ))}
    </datalist>
  );
}

interface ExerciseFieldProps extends FieldLook {
  /** The key of the exercise; "" for none yet. */
  readonly value: string;
  readonly onValue: (key: string, exercise: CatalogueEntry) => void;
  /** Empties the field once an exercise was taken, ready for the next. */
  readonly once?: boolean;
  readonly hint?: string;
}

/** An exercise of the catalogue, picked by typing part of its name. */
export function ExerciseField(props: ExerciseFieldProps) {
  const { value, onValue, once = false } = props;
  const desk = useDesk();
  const id = useId();
  const exercises = desk.exercises.value;
  const named = exercises.find((each) => each.key === value)?.name ?? value;
  const [typed, setTyped] = useState<string | null>(null);
  const [left, setLeft] = useState(false);
  const settle = (text: string) => {
    const found = match(exercises, text);
    setLeft(!found && text.trim() !== "");
    setTyped(found || text.trim() === "" ? null : text);
    if (found && (once || found.key !== value)) onValue(found.key, found);
  };
  const write = (event: InputEvent & { readonly currentTarget: HTMLInputElement }) => {
    const text = event.currentTarget.value;
    setLeft(false);
    // A name taken from the browser's list comes whole, not by keystrokes.
    if (event.inputType === "insertReplacementText" || !event.inputType) settle(text);
    else setTyped(text);
  };
  const press = (event: KeyboardEvent) => {
    if (event.key !== "Enter" || typed === null) return;
    event.preventDefault();
    settle(typed);
  };
  const fault = left && typed !== null ? `“${typed}” names no exercise, or several` : null;
  return (
    <Field {...props} id={id} typed={fault}>
      <input
        id={id}
        type="text"
        list={LIST}
        autocomplete="off"
        placeholder={props.hint}
        value={typed ?? (once ? "" : named)}
        onInput={write}
        onKeyDown={press}
        onBlur={() => typed !== null && !once && settle(typed)}
        {...faultProps(id, fault !== null || (props.faults?.length ?? 0) > 0)}
      />
    </Field>
  );
}

/** The exercise of that name or key, or else the only one whose name holds the text. */
function match(exercises: readonly CatalogueEntry[], text: string): CatalogueEntry | undefined {
  const wanted = text.trim().toLowerCase();
  if (!wanted) return undefined;
  const offered = exercises.filter((each) => !each.archived);
  const exact = exercises.find((each) => each.name.toLowerCase() === wanted || each.key === wanted);
  const near = offered.filter((each) => each.name.toLowerCase().includes(wanted));
  return exact ?? (near.length === 1 ? near[0] : undefined);
}
