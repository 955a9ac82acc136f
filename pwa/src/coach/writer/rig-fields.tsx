import type { Rig } from "../../api/types";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";

const PARTS = { none: "neither", bands: "bands", chains: "chains" } as const;
const BASES = { load: "the day’s load", maximum: "the maximum" } as const;
const POINTS = {
  bar: "on the bar",
  start: "at the start",
  mean: "on the whole",
  lockout: "at lockout",
} as const;
const ROUTES = {
  any: "as it fits",
  single: "single, anchor to bar",
  doubled: "doubled round the anchor",
  "inverted-v": "over the sleeve, peg to peg",
  choked: "choked through itself",
} as const;

interface RigFieldsProps {
  readonly rig: Rig | undefined;
  readonly onRig: (rig: Rig | undefined, field: string) => void;
}

/** Bands or chains: what share of what is wanted from them, and where in the lift. */
export function RigFields({ rig, onRig }: RigFieldsProps) {
  const choose = (part: keyof typeof PARTS) => {
    if (part === "none") return onRig(undefined, "rig part");
    return onRig({ ...rig, part, share_percent: rig?.share_percent ?? 20 }, "rig part");
  };
  return (
    <>
      <ChoiceField
        label="Bands or chains"
        choices={PARTS}
        value={rig?.part ?? "none"}
        onValue={choose}
      />
      {rig && (
        <>
          <NumberField
            label="They give"
            unit="%"
            width="w3"
            step={5}
            value={rig.share_percent}
            onValue={(share_percent) => onRig({ ...rig, share_percent }, "rig share")}
          />
          <ChoiceField
            label="of"
            choices={BASES}
            value={rig.base ?? "load"}
            onValue={(base) => onRig({ ...rig, base }, "rig base")}
          />
          <ChoiceField
            label="counted"
            choices={POINTS}
            value={rig.point ?? "lockout"}
            onValue={(point) => onRig({ ...rig, point }, "rig point")}
          />
          <ChoiceField<keyof typeof ROUTES>
            label="Route"
            choices={ROUTES}
            value={rig.route ?? "any"}
            onValue={(route) =>
              onRig({ ...rig, route: route === "any" ? undefined : route }, "rig route")
            }
          />
          <TruthField
            label="They help the lift"
            value={rig.assists ?? false}
            onValue={(on) => onRig({ ...rig, assists: on || undefined }, "rig assists")}
          />
        </>
      )}
    </>
  );
}
