import type { Fault } from "../../api/client";
import type { CalculatorInput } from "../answers";
import { ChoiceField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import { TextField } from "../fields/text-field";
import type { Column } from "../rows/columns";
import { ListField } from "../rows/list-field";
import { readReadings, writeReadings, type Reading } from "../rows/readings";
import { RowsEditor } from "../rows/rows-editor";
import { chosen, labelInWords, limitsInWords, type Row } from "./inputs";

const STEPS: Readonly<Record<string, number>> = { kg: 2.5, m: 0.01, mm: 1, cm: 1, "%": 5 };

interface InputFieldProps {
  readonly input: CalculatorInput;
  readonly value: unknown;
  readonly faults: readonly Fault[];
  readonly onValue: (value: unknown) => void;
}

/** The field that the served line of an input asks for. */
export function InputField({ input, value, faults, onValue }: InputFieldProps) {
  const look = { label: labelInWords(input), faults } as const;
  switch (input.kind) {
    case "number":
    case "whole number":
      return (
        <NumberField
          {...look}
          width="w6"
          unit={limitsInWords(input)}
          whole={input.kind === "whole number"}
          step={STEPS[input.unit] ?? (input.most !== null && input.most <= 2 ? 0.01 : 1)}
          least={input.least ?? 0}
          usual={typeof input.default === "number" ? input.default : undefined}
          value={typeof value === "number" ? value : undefined}
          onValue={onValue}
        />
      );
    case "choice":
      return (
        <ChoiceField
          {...look}
          choices={choicesOf(input)}
          value={chosen(input, value)}
          onValue={onValue}
        />
      );
    case "date":
    case "text":
      return (
        <TextField
          {...look}
          width={input.kind === "text" ? "w20" : "w12"}
          type={input.kind}
          value={typeof value === "string" ? value : ""}
          onValue={onValue}
        />
      );
    case "list":
      return <RowsInput input={input} value={value} faults={faults} onValue={onValue} />;
  }
}

/** Without a usual one, none is chosen yet. */
function choicesOf(input: CalculatorInput): Readonly<Record<string, string>> {
  const named = input.choices.map((choice, place) => [choice, input.choice_names[place] ?? choice]);
  const open = input.default === null ? [["", "choose …"]] : [];
  return Object.fromEntries([...open, ...named]) as Readonly<Record<string, string>>;
}

function RowsInput({ input, value, faults, onValue }: InputFieldProps) {
  const fields = input.of.map(({ name }) => name).join(" ");
  if (fields === "length_m force_n") {
    return (
      <ListField<readonly Reading[]>
        label={labelInWords(input)}
        width="full"
        hint="1.30 m 9.5 kg; 1.60 m 14 kg"
        faults={faults}
        value={(value as readonly Reading[] | undefined) ?? []}
        write={writeReadings}
        read={readReadings}
        onValue={onValue}
      />
    );
  }
  return (
    <fieldset>
      <legend>{labelInWords(input)}</legend>
      <RowsEditor<Row>
        list={input.name}
        one="row"
        rows={(value as readonly Row[] | undefined) ?? []}
        columns={input.of.map(columnOf)}
        blank={() => ({})}
        faults={faults}
        onRows={onValue}
      />
    </fieldset>
  );
}

function columnOf(part: CalculatorInput["of"][number]): Column<Row> {
  const { name: field, label, unit, kind } = part;
  if (kind !== "number" && kind !== "whole number") {
    return { kind: "text", field, label, width: "w8" };
  }
  const whole = kind === "whole number";
  return { kind: "number", field, label, unit, whole, step: whole ? 1 : STEPS[unit] };
}
