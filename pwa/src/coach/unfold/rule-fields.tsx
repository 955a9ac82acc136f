import type { Progression } from "../../api/types";
import type { RuleName, RuleOf } from "../block/progressions";
import { NumberField } from "../fields/number-field";
import { readNumbers, writeNumber } from "../fields/numbers";
import { ListField } from "../rows/list-field";

interface RuleFieldsProps {
  readonly rule: Progression;
  readonly onRule: (rule: Progression) => void;
}

/** The figures of a rule; "repeat" has none. */
export function RuleFields({ rule, onRule }: RuleFieldsProps) {
  switch (rule.rule) {
    case "add-kg":
      return <More unit="kg a week" value={rule.kg} on={(kg) => onRule({ ...rule, kg })} />;
    case "add-percent":
      return (
        <More unit="% a week" value={rule.percent} on={(percent) => onRule({ ...rule, percent })} />
      );
    case "percent-by-week":
      return (
        <Values
          label="% of the maximum, week by week"
          values={rule.percents}
          on={(percents) => onRule({ ...rule, percents })}
        />
      );
    case "falling-reserve":
      return (
        <Values
          label="In reserve, week by week"
          values={rule.rirs}
          on={(rirs) => onRule({ ...rule, rirs })}
        />
      );
    case "rising-sets":
      return (
        <Values
          label="Sets, week by week"
          values={rule.sets}
          on={(sets) => onRule({ ...rule, sets })}
        />
      );
    case "wave":
      return <Wave rule={rule} onRule={onRule} />;
    case "double":
      return <Double rule={rule} onRule={onRule} />;
    case "light-week":
      return <LightWeekFields rule={rule} onRule={(light) => onRule({ ...rule, ...light })} />;
    case "test-week":
      return <Every value={rule.every} on={(every) => onRule({ ...rule, every })} />;
    case "repeat":
      return null;
  }
}

interface ValueProps {
  readonly value: number;
  readonly on: (value: number) => void;
}

function More({ unit, value, on }: ValueProps & { readonly unit: string }) {
  return (
    <NumberField
      label="More by"
      unit={unit}
      width="w3"
      step={0.5}
      least={-50}
      value={value}
      onValue={known(on)}
    />
  );
}

function Every({ value, on }: ValueProps) {
  return (
    <NumberField
      label="Every"
      unit="weeks"
      width="w2"
      whole
      least={2}
      value={value}
      onValue={known(on)}
    />
  );
}

interface ValuesProps {
  readonly label: string;
  readonly values: readonly number[];
  readonly on: (values: number[]) => void;
}

function Values({ label, values, on }: ValuesProps) {
  return (
    <ListField<number[]>
      label={label}
      width="w12"
      hint="70, 75, 80"
      value={[...values]}
      write={(list) => list.map(writeNumber).join(", ")}
      read={(text) => some(readNumbers(text))}
      onValue={on}
    />
  );
}

interface FieldsOf<Name extends RuleName> {
  readonly rule: RuleOf<Name>;
  readonly onRule: (rule: Progression) => void;
}

function Wave({ rule, onRule }: FieldsOf<"wave">) {
  return (
    <>
      <Values
        label="% of the maximum, then again"
        values={rule.percents}
        on={(percents) => onRule({ ...rule, percents })}
      />
      <NumberField
        label="each time higher by"
        unit="%"
        width="w3"
        step={0.5}
        value={rule.step_percent ?? 0}
        onValue={known((step_percent) => onRule({ ...rule, step_percent }))}
      />
    </>
  );
}

function Double({ rule, onRule }: FieldsOf<"double">) {
  return (
    <>
      <NumberField
        label="Reps from"
        width="w2"
        whole
        least={1}
        value={rule.reps_from}
        onValue={known((reps_from) => onRule({ ...rule, reps_from }))}
      />
      <NumberField
        label="to"
        width="w2"
        whole
        least={1}
        value={rule.reps_to}
        onValue={known((reps_to) => onRule({ ...rule, reps_to }))}
      />
      <NumberField
        label="then more by"
        unit="kg"
        width="w3"
        step={0.5}
        value={rule.add_kg}
        onValue={known((add_kg) => onRule({ ...rule, add_kg }))}
      />
    </>
  );
}

interface LightWeekProps {
  readonly rule: { readonly every: number; readonly factor: number };
  readonly onRule: (part: { every: number; factor: number }) => void;
}

/** How often a light week comes, and at which share of the load. */
export function LightWeekFields({ rule, onRule }: LightWeekProps) {
  const { every, factor } = rule;
  return (
    <>
      <Every value={every} on={(next) => onRule({ every: next, factor })} />
      <NumberField
        label="at"
        unit="% of the load"
        width="w3"
        step={5}
        least={30}
        value={Math.round(factor * 1000) / 10}
        onValue={known((percent) => onRule({ every, factor: percent / 100 }))}
      />
    </>
  );
}

/** An emptied field is being typed into: the rule keeps its figure until there is another. */
function known(on: (value: number) => void) {
  return (value: number | undefined) => value !== undefined && on(value);
}

function some(list: number[] | null): number[] | null {
  return list !== null && list.length > 0 ? list : null;
}
