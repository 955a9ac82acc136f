/** What a method needs beyond its sets, in a few words. */
import type { ExercisePlan } from "../../api/types";

type Details = NonNullable<ExercisePlan["details"]>;
export type DetailsOf<Field extends string> = Extract<Details, Partial<Record<Field, unknown>>>;

export function detailsInWords({ method, details }: ExercisePlan): string {
  if (!details) return "";
  switch (method) {
    case "tempo": {
      const tempo = details as DetailsOf<"lowering_s">;
      return [tempo.lowering_s, tempo.pause_low_s, tempo.lifting_s, tempo.pause_high_s].join("-");
    }
    case "hold":
      return `hold at ${Math.round((details as DetailsOf<"position">).position * 100)} % of the way`;
    case "speed":
      return `stop at ${(details as DetailsOf<"stop_at_loss_percent">).stop_at_loss_percent ?? 10} % loss`;
    case "one-sided":
      return `${(details as DetailsOf<"first">).first} first`;
    case "cluster":
      return `${(details as DetailsOf<"block_rest_s">).block_rest_s} s between blocks`;
    case "occlusion": {
      const rule = details as DetailsOf<"limb">;
      return occlusionInWords(rule);
    }
    case "unstable-bar":
      return (details as DetailsOf<"hanging">).hanging ? "load hangs" : "load on the sleeves";
    case "maximum-test": {
      const test = details as DetailsOf<"attempts">;
      return `up to ${test.attempts ?? 4} attempts at ${test.reps ?? 1}`;
    }
    case "straight":
    case "top-and-back-off":
    case "timed":
    case "warm-up":
      return "";
  }
}

function occlusionInWords(rule: DetailsOf<"limb">): string {
  const parts = [
    `${rule.restriction} on the ${rule.limb.replace("-", " ")}`,
    rule.tightness === undefined ? "" : `tightness ${rule.tightness} of 10`,
    rule.pressure_percent === undefined ? "" : `${rule.pressure_percent} % of occlusion`,
    (rule.both_at_once ?? true) ? "" : "one side after the other",
  ];
  return parts.filter(Boolean).join(", ");
}
