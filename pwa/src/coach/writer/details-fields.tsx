import type { ExercisePlan } from "../../api/types";
import { TruthField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import type { DetailsOf } from "./details-words";
import { Hold, MaximumTest, Occlusion, OneSided, Speed, Tempo } from "./method-rules";

type Details = NonNullable<ExercisePlan["details"]>;

interface DetailsFieldsProps {
  readonly details: Pick<ExercisePlan, "method" | "details">;
  readonly onDetails: (details: Details, field: string) => void;
}

/** The fields that the method needs beyond its sets. */
export function DetailsFields({ details: plan, onDetails }: DetailsFieldsProps) {
  const { method, details } = plan;
  if (!details) return null;
  const put = (part: object, field: string) => onDetails({ ...details, ...part }, field);
  switch (method) {
    case "tempo":
      return <Tempo rule={details as DetailsOf<"lowering_s">} put={put} />;
    case "speed":
      return <Speed rule={details as DetailsOf<"stop_at_loss_percent">} put={put} />;
    case "hold":
      return <Hold rule={details as DetailsOf<"position">} put={put} />;
    case "occlusion":
      return <Occlusion rule={details as DetailsOf<"limb">} put={put} />;
    case "one-sided":
      return <OneSided rule={details as DetailsOf<"first">} put={put} />;
    case "unstable-bar": {
      const { hanging } = details as DetailsOf<"hanging">;
      const change = (on: boolean) => put({ hanging: on }, "");
      return <TruthField label="The load hangs from the bar" value={hanging} onValue={change} />;
    }
    case "cluster":
      return (
        <NumberField
          label="Rest between blocks"
          unit="s"
          width="w3"
          step={5}
          value={(details as DetailsOf<"block_rest_s">).block_rest_s}
          onValue={(block_rest_s) =>
            block_rest_s !== undefined && put({ block_rest_s }, "block rest")
          }
        />
      );
    case "maximum-test":
      return <MaximumTest rule={details as DetailsOf<"attempts">} put={put} />;
    default:
      return null;
  }
}
