import { useId, useReducer, useRef } from "preact/hooks";

import { Field, faultProps, type FieldLook } from "./field";
import { readNumber, writeNumber } from "./numbers";

interface NumberFieldProps extends FieldLook {
  readonly value: number | undefined;
  readonly onValue: (value: number | undefined) => void;
  /** What one press of the up or down key adds; ten times that with shift. */
  readonly step?: number;
  readonly least?: number;
  readonly whole?: boolean;
  /** What an empty field means. */
  readonly usual?: number;
}

/**
 * A number, typed with a point or a comma. What is no number is kept as typed and said to be wrong;
 * it is not handed on.
 */
export function NumberField(props: NumberFieldProps) {
  const { value, onValue, step = 1, least = 0, whole = false } = props;
  const id = useId();
  const { text, setText, settle } = useTextOf(value);
  const typed = faultOf(text, whole);
  const write = (next: string) => {
    setText(next);
    const read = readNumber(next);
    if (read.kind === "empty") onValue(undefined);
    if (read.kind === "number" && !faultOf(next, whole)) onValue(read.value);
  };
  const press = (event: KeyboardEvent) => {
    const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (way === undefined || event.altKey) return;
    event.preventDefault();
    const by = way * step * (event.shiftKey ? 10 : 1);
    write(writeNumber(Math.max(least, (value ?? 0) + by)));
  };
  return (
    <Field {...props} id={id} typed={typed}>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        placeholder={writeNumber(props.usual)}
        value={text}
        onInput={(event) => write(event.currentTarget.value)}
        onKeyDown={press}
        onBlur={() => typed === null && settle()}
        {...faultProps(id, typed !== null || (props.faults?.length ?? 0) > 0)}
      />
    </Field>
  );
}

/**
 * The text of a field: as it was typed for as long as the value stays what it became by that, and
 * the value's own figures as soon as somebody else changes it.
 */
function useTextOf(value: number | undefined) {
  const text = useRef(writeNumber(value));
  const last = useRef(value);
  const typing = useRef(false);
  const [, draw] = useReducer((count: number) => count + 1, 0);
  if (!typing.current && last.current !== value) text.current = writeNumber(value);
  last.current = value;
  typing.current = false;
  const setText = (next: string) => {
    text.current = next;
    typing.current = true;
    draw(0);
  };
  const settle = () => {
    text.current = writeNumber(value);
    draw(0);
  };
  return { text: text.current, setText, settle };
}

function faultOf(text: string, whole: boolean): string | null {
  const read = readNumber(text);
  if (read.kind === "wrong") return `“${text}” is no number`;
  if (whole && read.kind === "number" && !Number.isInteger(read.value)) return "whole numbers only";
  return null;
}
