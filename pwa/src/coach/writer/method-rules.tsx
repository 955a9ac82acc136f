import { ChoiceField, TruthField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import type { DetailsOf } from "./details-words";

interface RuleProps<Field extends string> {
  readonly rule: DetailsOf<Field>;
  readonly put: (part: object, field: string) => void;
}

const TEMPO = [
  ["lowering_s", "Lowering"],
  ["pause_low_s", "pause"],
  ["lifting_s", "lifting"],
  ["pause_high_s", "pause"],
] as const;

export function Tempo({ rule, put }: RuleProps<"lowering_s">) {
  return (
    <>
      {TEMPO.map(([field, label]) => (
        <NumberField
          key={field}
          label={label}
          unit="s"
          width="w2"
          whole
          value={rule[field]}
          onValue={(value) => value !== undefined && put({ [field]: value }, field)}
        />
      ))}
    </>
  );
}

export function Speed({ rule, put }: RuleProps<"stop_at_loss_percent">) {
  return (
    <>
      <NumberField
        label="Stop when this much slower than the best set"
        unit="%"
        width="w3"
        value={rule.stop_at_loss_percent ?? 10}
        onValue={(value) => put({ stop_at_loss_percent: value }, "loss")}
      />
      <NumberField
        label="or at a quality of"
        unit="of 5"
        width="w2"
        whole
        value={rule.stop_at_quality ?? 2}
        onValue={(value) => put({ stop_at_quality: value }, "quality")}
      />
    </>
  );
}

export function Hold({ rule, put }: RuleProps<"position">) {
  return (
    <>
      <NumberField
        label="Held at"
        unit="% of the way"
        width="w3"
        step={5}
        value={Math.round(rule.position * 100)}
        onValue={(value) => value !== undefined && put({ position: value / 100 }, "position")}
      />
      <TruthField
        label="The seconds count for each repetition"
        value={rule.per_rep ?? false}
        onValue={(per_rep) => put({ per_rep }, "")}
      />
    </>
  );
}

const LIMBS = { "upper-arm": "upper arm", thigh: "thigh", calf: "calf" } as const;
const RESTRICTIONS = { wrap: "wrap", cuff: "cuff" } as const;
const ORDERS = { both: "both sides at once", each: "one side after the other" } as const;

export function Occlusion({ rule, put }: RuleProps<"limb">) {
  return (
    <>
      <ChoiceField
        label="Limb"
        choices={LIMBS}
        value={rule.limb}
        onValue={(limb) => put({ limb }, "")}
      />
      <ChoiceField
        label="By"
        choices={RESTRICTIONS}
        value={rule.restriction}
        onValue={(restriction) =>
          put({ restriction, tightness: undefined, pressure_percent: undefined }, "")
        }
      />
      {rule.restriction === "wrap" ? (
        <NumberField
          label="Tightness"
          unit="of 10"
          width="w2"
          whole
          value={rule.tightness}
          onValue={(tightness) => put({ tightness }, "tightness")}
        />
      ) : (
        <NumberField
          label="Pressure"
          unit="% of occlusion"
          width="w3"
          step={5}
          value={rule.pressure_percent}
          onValue={(pressure_percent) => put({ pressure_percent }, "pressure")}
        />
      )}
      <ChoiceField<"both" | "each">
        label="Sides"
        choices={ORDERS}
        value={(rule.both_at_once ?? true) ? "both" : "each"}
        onValue={(order) => put({ both_at_once: order === "both" }, "")}
      />
    </>
  );
}

const SIDES = { left: "left", right: "right" } as const;
const KNEES = {
  none: "neither",
  same: "on the working side",
  opposite: "on the other side",
} as const;

export function OneSided({ rule, put }: RuleProps<"first">) {
  return (
    <>
      <ChoiceField
        label="First side"
        choices={SIDES}
        value={rule.first}
        onValue={(first) => put({ first }, "")}
      />
      <ChoiceField<keyof typeof KNEES>
        label="Knee down"
        choices={KNEES}
        value={rule.knee_down ?? "none"}
        onValue={(knee) => put({ knee_down: knee === "none" ? undefined : knee }, "")}
      />
    </>
  );
}

export function MaximumTest({ rule, put }: RuleProps<"attempts">) {
  return (
    <>
      <NumberField
        label="Maximum at"
        unit="reps"
        width="w2"
        whole
        least={1}
        value={rule.reps ?? 1}
        onValue={(reps) => put({ reps }, "test reps")}
      />
      <NumberField
        label="Attempts, at most"
        width="w2"
        whole
        least={1}
        value={rule.attempts ?? 4}
        onValue={(attempts) => put({ attempts }, "attempts")}
      />
    </>
  );
}
