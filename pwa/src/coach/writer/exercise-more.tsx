import type { ExercisePlan, RampStep } from "../../api/types";
import { within } from "../block/faults";
import { pathOf } from "../block/places";
import { ruleInWords } from "../block/progressions";
import { restInWords } from "../block/wish-words";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import { TextField } from "../fields/text-field";
import { ListField } from "../rows/list-field";
import { DetailsFields } from "./details-fields";
import { detailsInWords } from "./details-words";
import { useExerciseEdit, type ExerciseProps } from "./exercise-editor";
import { readRamp, writeRamp } from "./ramp";
import { RigFields } from "./rig-fields";
import { useRemarks } from "./writer-state";

/** Rest, cue, warm-up and what the method needs: one line of words until it is opened. */
export function ExerciseMore({ plan, at, session }: ExerciseProps) {
  const { faults } = useRemarks();
  const edit = useExerciseEdit({ plan, at });
  const path = pathOf(at);
  return (
    <details class="exercise-more">
      <summary>{summary(plan)}</summary>
      <div class="fields">
        <RestFields plan={plan} at={at} />
        <DetailsFields details={plan} onDetails={(details, field) => edit({ details }, field)} />
        <WarmUpFields plan={plan} at={at} />
        <TextField
          label="Cue"
          width="full"
          longest={300}
          value={plan.cue ?? ""}
          faults={within(faults, `${path}.cue`)}
          onValue={(cue) => edit({ cue: cue || undefined }, "cue")}
        />
        <RigFields
          rig={plan.rig}
          place={{ session: session.key, exercise: plan.key }}
          faults={within(faults, `${path}.rig`)}
          onRig={(rig, field) => edit({ rig }, field)}
        />
        <NumberField
          label="May be off by"
          unit="%"
          width="w3"
          step={0.5}
          value={plan.tolerance_percent}
          onValue={(tolerance_percent) => edit({ tolerance_percent }, "tolerance")}
        />
        <TruthField
          label="Hold the plan: what was done moves no load"
          value={plan.hold_the_plan ?? false}
          onValue={(on) => edit({ hold_the_plan: on || undefined })}
        />
      </div>
    </details>
  );
}

function RestFields({ plan, at }: Pick<ExerciseProps, "plan" | "at">) {
  const { faults } = useRemarks();
  const edit = useExerciseEdit({ plan, at });
  const rest = plan.rest;
  const change = (from: number | undefined, to: number | undefined) => {
    const known = from ?? to;
    if (known === undefined) return edit({ rest: undefined }, "rest");
    return edit({ rest: { from_s: from ?? known, to_s: to ?? known } }, "rest");
  };
  const look = { width: "w4", unit: "s", step: 15, whole: true } as const;
  return (
    <>
      <NumberField
        {...look}
        label="Rest from"
        value={rest?.from_s}
        onValue={(from) =>
          change(from, from !== undefined && (rest?.to_s ?? 0) < from ? from : rest?.to_s)
        }
      />
      <NumberField
        {...look}
        label="to"
        value={rest?.to_s}
        faults={within(faults, `${pathOf(at)}.rest`)}
        onValue={(to) => change(rest?.from_s, to)}
      />
    </>
  );
}

const WARM_UPS = {
  usual: "worked out from the first work set",
  none: "none",
  own: "own steps",
} as const;

const FIRST_RAMP: readonly RampStep[] = [
  { reps: 5, share: 0.4 },
  { reps: 3, share: 0.6 },
];

function WarmUpFields({ plan, at }: Pick<ExerciseProps, "plan" | "at">) {
  const { faults } = useRemarks();
  const edit = useExerciseEdit({ plan, at });
  const steps = plan.warm_up;
  const kind = warmUpKind(plan);
  const choose = (next: keyof typeof WARM_UPS) => {
    const ramp = { usual: undefined, none: [], own: [...FIRST_RAMP] }[next];
    edit({ warm_up: ramp });
  };
  return (
    <>
      <ChoiceField label="Warm-up" choices={WARM_UPS} value={kind} onValue={choose} />
      {kind === "own" && (
        <ListField<readonly RampStep[]>
          label="Steps, of the work load"
          width="w20"
          hint="5 at 40 %; 3 at 60 %"
          value={steps ?? []}
          faults={within(faults, `${pathOf(at)}.warm_up`)}
          write={writeRamp}
          read={readRamp}
          onValue={(ramp) => ramp.length > 0 && edit({ warm_up: [...ramp] }, "ramp")}
        />
      )}
    </>
  );
}

function warmUpKind(plan: ExercisePlan): keyof typeof WARM_UPS {
  if (plan.warm_up === undefined) return "usual";
  return plan.warm_up.length === 0 ? "none" : "own";
}

function summary(plan: ExercisePlan): string {
  const parts = [
    plan.rest ? restInWords(plan.rest) : "no rest said",
    detailsInWords(plan),
    { usual: "", none: "no warm-up", own: "own warm-up" }[warmUpKind(plan)],
    plan.rig ? `with ${plan.rig.part}${plan.rig.assists ? " that help" : ""}` : "",
    plan.progression ? ruleInWords(plan.progression) : "",
    plan.cue ? `“${plan.cue}”` : "",
  ];
  return parts.filter(Boolean).join(" · ");
}
