import { useId, useState } from "preact/hooks";

import { Field, faultProps, type FieldLook } from "../fields/field";

interface ListFieldProps<T> extends FieldLook {
  readonly value: T;
  readonly onValue: (value: T) => void;
  readonly write: (value: T) => string;
  /** The value of a text, or null where the text is not understood. */
  readonly read: (text: string) => T | null;
  readonly hint?: string;
}

/** Several values in one line of text; read when the field is left, kept as typed while wrong. */
export function ListField<T>(props: ListFieldProps<T>) {
  const { value, onValue, write, read, hint } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const type = (text: string) => {
    setTyped(text);
    const next = read(text);
    if (next !== null) onValue(next);
    if (next !== null) setWrong(false);
  };
  const leave = () => {
    const bad = typed !== null && read(typed) === null;
    setWrong(bad);
    if (!bad) setTyped(null);
  };
  return (
    <Field {...props} id={id} typed={wrong ? `write like ${hint ?? "5, 10, 15"}` : null}>
      <input
        id={id}
        type="text"
        autocomplete="off"
        placeholder={hint}
        value={typed ?? write(value)}
        onInput={(event) => type(event.currentTarget.value)}
        onBlur={leave}
        {...faultProps(id, wrong || (props.faults?.length ?? 0) > 0)}
      />
    </Field>
  );
}
