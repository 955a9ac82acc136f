import { useId } from "preact/hooks";

import { Field, faultProps, type FieldLook } from "./field";

/** Apart from each other, because the types of JSX tell inputs apart by this literal. */
const TYPES = {
  text: { type: "text" },
  email: { type: "email" },
  password: { type: "password" },
  date: { type: "date" },
} as const;

interface TextFieldProps extends FieldLook {
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly type?: keyof typeof TYPES;
  readonly autocomplete?: string;
  readonly required?: boolean;
  readonly longest?: number;
  readonly hint?: string;
}

export function TextField(props: TextFieldProps) {
  const { value, onValue, type = "text", autocomplete = "off", required, longest, hint } = props;
  const id = useId();
  return (
    <Field {...props} id={id}>
      <input
        id={id}
        {...TYPES[type]}
        value={value}
        autocomplete={autocomplete}
        required={required}
        maxLength={longest}
        placeholder={hint}
        onInput={(event) => onValue(event.currentTarget.value)}
        {...faultProps(id, (props.faults?.length ?? 0) > 0)}
      />
    </Field>
  );
}

interface LongTextProps extends FieldLook {
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly rows?: number;
  readonly longest?: number;
}

export function LongTextField(props: LongTextProps) {
  const id = useId();
  return (
    <Field {...props} id={id}>
      <textarea
        id={id}
        rows={props.rows ?? 2}
        maxLength={props.longest}
        value={props.value}
        onInput={(event) => props.onValue(event.currentTarget.value)}
        {...faultProps(id, (props.faults?.length ?? 0) > 0)}
      />
    </Field>
  );
}
