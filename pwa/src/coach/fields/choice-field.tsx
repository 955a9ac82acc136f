import { useId } from "preact/hooks";

import { Field, faultProps, type FieldLook } from "./field";

interface ChoiceFieldProps<T extends string> extends FieldLook {
  readonly value: T;
  readonly onValue: (value: T) => void;
  readonly choices: Readonly<Record<T, string>>;
}

/** One of a few named values. */
export function ChoiceField<T extends string>(props: ChoiceFieldProps<T>) {
  const { value, onValue, choices } = props;
  const id = useId();
  const names = Object.keys(choices) as T[];
  return (
    <Field {...props} id={id}>
      <select
        id={id}
        value={value}
        onChange={(event) => onValue(event.currentTarget.value as T)}
        {...faultProps(id, (props.faults?.length ?? 0) > 0)}
      >
        {names.map((name) => (
          <option key={name} value={name}>
            {choices[name]}
          </option>
        ))}
      </select>
    </Field>
  );
}

interface TruthFieldProps {
  readonly label: string;
  readonly value: boolean;
  readonly onValue: (value: boolean) => void;
  readonly quiet?: boolean;
}

export function TruthField({ label, value, onValue, quiet = false }: TruthFieldProps) {
  const id = useId();
  return (
    <span class="truth">
      <input
        id={id}
        type="checkbox"
        checked={value}
        onChange={(event) => onValue(event.currentTarget.checked)}
      />
      <label for={id} class={quiet ? "sr-only" : undefined}>
        {label}
      </label>
    </span>
  );
}
