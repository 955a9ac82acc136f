import { useDesk } from "../shell/desk-state";
import type { FieldLook } from "../fields/field";
import { ListField } from "./list-field";

interface ExercisesFieldProps extends FieldLook {
  readonly value: readonly string[];
  readonly onValue: (value: readonly string[]) => void;
}

/** Several exercises by name, with semicolons between. */
export function ExercisesField(props: ExercisesFieldProps) {
  const exercises = useDesk().exercises.value;
  const nameOf = (key: string) => exercises.find((each) => each.key === key)?.name ?? key;
  const keyOf = (name: string) => {
    const wanted = name.toLowerCase();
    return exercises.find((each) => each.key === wanted || each.name.toLowerCase() === wanted)?.key;
  };
  const read = (text: string) => {
    const names = text.split(";").map((name) => name.trim());
    const keys = names.filter(Boolean).map(keyOf);
    const known = keys.filter((key) => key !== undefined);
    return known.length === keys.length ? known : null;
  };
  return (
    <ListField<readonly string[]>
      {...props}
      hint="Deadlift; Good morning"
      write={(keys) => keys.map(nameOf).join("; ")}
      read={read}
    />
  );
}
