import type { ExercisePlan } from "../../api/types";
import { isHeldEachRep } from "../block/methods";
import { NumberField } from "../fields/number-field";
import { readNumbers } from "../fields/numbers";
import { ListField } from "../rows/list-field";
import type { LineFieldsProps } from "./line-row";

interface ContentFieldsProps extends LineFieldsProps {
  readonly plan: ExercisePlan;
}

/** What one set holds, by the method: repetitions, seconds, metres or blocks. */
export function ContentFields({ asks, name, change, plan }: ContentFieldsProps) {
  const { method } = plan;
  const reps = (
    <NumberField
      label={`Repetitions, ${name}`}
      quiet
      width="w2"
      whole
      least={1}
      value={asks.reps}
      onValue={(value) => change({ reps: value }, "reps")}
    />
  );
  const seconds = (
    <NumberField
      label={`Seconds, ${name}`}
      quiet
      width="w3"
      unit="s"
      step={5}
      value={asks.seconds}
      onValue={(value) => change({ seconds: value }, "seconds")}
    />
  );
  if (method === "hold") {
    return (
      <>
        {(isHeldEachRep(plan) || asks.reps !== undefined) && (
          <>
            {reps}
            <span class="times" aria-hidden="true">
              ×
            </span>
          </>
        )}
        {seconds}
      </>
    );
  }
  if (method === "timed") {
    return (
      <>
        {seconds}
        <NumberField
          label={`Distance, ${name}`}
          quiet
          width="w3"
          unit="m"
          step={10}
          value={asks.distance_m}
          onValue={(value) => change({ distance_m: value }, "distance")}
        />
      </>
    );
  }
  if (method === "cluster") {
    return (
      <ListField<readonly number[]>
        label={`Repetitions of each block, ${name}`}
        quiet
        width="w6"
        hint="2 2 2"
        value={asks.blocks ?? []}
        write={(blocks) => blocks.join(" ")}
        read={(text) => readNumbers(text.replaceAll("+", " "))}
        onValue={(blocks) => change({ blocks: [...blocks] }, "blocks")}
      />
    );
  }
  return reps;
}
