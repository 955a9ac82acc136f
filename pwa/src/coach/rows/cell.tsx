import type { Fault } from "../../api/client";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { ExerciseField } from "../fields/exercise-field";
import { NumberField } from "../fields/number-field";
import { readNumbers } from "../fields/numbers";
import { TextField } from "../fields/text-field";
import type { Column } from "./columns";
import { ListField } from "./list-field";
import { ExercisesField } from "./exercises-field";
import { readReadings, writeReadings, type Reading } from "./readings";

interface CellProps<T> {
  readonly column: Column<T>;
  readonly value: unknown;
  readonly onValue: (value: unknown) => void;
  readonly label: string;
  readonly faults: readonly Fault[];
}

/** The field of one column in one row. */
export function Cell<T>({ column, value, onValue, label, faults }: CellProps<T>) {
  const look = { label, faults, quiet: true, width: column.width } as const;
  switch (column.kind) {
    case "number":
      return (
        <ScaledNumber
          column={column}
          value={value}
          onValue={onValue}
          label={label}
          faults={faults}
        />
      );
    case "text":
    case "date":
      return (
        <TextField
          {...look}
          type={column.kind}
          value={typeof value === "string" ? value : ""}
          onValue={(text) => onValue(text === "" ? undefined : text)}
        />
      );
    case "exercise":
      return (
        <ExerciseField {...look} value={typeof value === "string" ? value : ""} onValue={onValue} />
      );
    case "exercises":
      return (
        <ExercisesField
          {...look}
          value={(value as readonly string[] | undefined) ?? []}
          onValue={onValue}
        />
      );
    case "choice": {
      const chosen = typeof value === "string" ? value : column.usual;
      return <ChoiceField {...look} choices={column.choices} value={chosen} onValue={onValue} />;
    }
    case "truth": {
      const said = typeof value === "boolean" ? value : column.usual;
      return <TruthField label={label} quiet value={said} onValue={onValue} />;
    }
    case "numbers":
      return (
        <ListField<readonly number[]>
          {...look}
          unit={column.unit}
          hint={column.hint}
          value={(value as readonly number[] | undefined) ?? []}
          write={(numbers) => numbers.join(", ")}
          read={readNumbers}
          onValue={onValue}
        />
      );
    case "readings":
      return (
        <ListField<readonly Reading[]>
          {...look}
          hint={column.hint}
          value={(value as readonly Reading[] | undefined) ?? []}
          write={writeReadings}
          read={readReadings}
          onValue={onValue}
        />
      );
  }
}

function ScaledNumber<T>({ column, value, onValue, label, faults }: CellProps<T>) {
  if (column.kind !== "number") return null;
  const scale = column.scale ?? 1;
  const shown = typeof value === "number" ? value * scale : undefined;
  return (
    <NumberField
      label={label}
      quiet
      width={column.width ?? "w4"}
      unit={column.unit}
      step={column.step}
      whole={column.whole}
      usual={column.usual}
      faults={faults}
      value={shown}
      onValue={(next) => onValue(next === undefined ? undefined : tidy(next / scale))}
    />
  );
}

/** Without the dust of binary fractions. */
function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
