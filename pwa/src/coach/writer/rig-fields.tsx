import { useState } from "preact/hooks";

import type { Fault } from "../../api/client";
import type { Rig } from "../../api/types";
import { namesThings, withoutThings, withPart } from "../block/rigs";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import { FindRigs } from "./find-rigs";
import type { RigPlace } from "./use-rigs";

const PARTS = { none: "neither", bands: "bands", chains: "chains" } as const;
const BASES = { load: "the day’s load", maximum: "the maximum" } as const;
const POINTS = { start: "at the start", mean: "on the whole", lockout: "at lockout" } as const;
const ROUTES = {
  any: "as it fits",
  single: "single, anchor to bar",
  doubled: "doubled round the anchor",
  "inverted-v": "over the sleeve, peg to peg",
  choked: "choked through itself",
} as const;

interface RigFieldsProps {
  readonly rig: Rig | undefined;
  readonly place: RigPlace;
  readonly faults: readonly Fault[];
  readonly onRig: (rig: Rig | undefined, field: string) => void;
}

/** Bands or chains: what share of what is wanted from them, and where in the lift. */
export function RigFields({ rig, place, faults, onRig }: RigFieldsProps) {
  const [open, setOpen] = useState(false);
  const choose = (part: keyof typeof PARTS) =>
    onRig(part === "none" ? undefined : withPart(rig, part), "rig part");
  const find = () => {
    if (!rig) choose("bands");
    setOpen(!open || !rig);
  };
  const shown = open && rig !== undefined;
  return (
    <>
      <ChoiceField
        label="Bands or chains"
        choices={PARTS}
        value={rig?.part ?? "none"}
        onValue={choose}
      />
      {rig && <ShareFields rig={rig} faults={faults} onRig={onRig} />}
      <button type="button" aria-expanded={shown} onClick={find}>
        Find {rig?.part ?? "bands"}
      </button>
      {shown && <FindRigs rig={rig} place={place} onTake={(taken) => onRig(taken, "")} />}
    </>
  );
}

interface ShareFieldsProps extends Pick<RigFieldsProps, "faults" | "onRig"> {
  readonly rig: Rig;
}

function ShareFields({ rig, faults, onRig }: ShareFieldsProps) {
  return (
    <>
      <NumberField
        label="They give"
        unit="%"
        width="w3"
        step={5}
        value={rig.share_percent}
        faults={faults.filter(({ path }) => path.endsWith(".share_percent"))}
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
        value={rig.point === "bar" ? "lockout" : (rig.point ?? "lockout")}
        onValue={(point) => onRig({ ...rig, point }, "rig point")}
      />
      {rig.part === "bands" && (
        <TruthField
          label="They help the lift"
          value={rig.assists ?? false}
          onValue={(on) =>
            onRig({ ...withoutThings(rig), assists: on || undefined }, "rig assists")
          }
        />
      )}
      {namesThings(rig) ? (
        <NamedThings rig={rig} onRig={onRig} />
      ) : (
        <FreeFields rig={rig} onRig={onRig} />
      )}
    </>
  );
}

type FreeFieldsProps = Pick<ShareFieldsProps, "rig" | "onRig">;

/** How it is led, where each kit chooses its own things. */
function FreeFields({ rig, onRig }: FreeFieldsProps) {
  return (
    <>
      <ChoiceField<keyof typeof ROUTES>
        label="Route"
        choices={ROUTES}
        value={rig.route ?? "any"}
        onValue={(route) =>
          onRig({ ...rig, route: route === "any" ? undefined : route }, "rig route")
        }
      />
      <NumberField
        label="Pieces a side"
        width="w2"
        whole
        least={1}
        usual={1}
        value={rig.per_side}
        onValue={(per_side) => onRig({ ...rig, per_side }, "rig pieces")}
      />
    </>
  );
}

function NamedThings({ rig, onRig }: FreeFieldsProps) {
  return (
    <span class="named-things">
      Names the {rig.part} of one kit; another kit lacks them.
      <button type="button" class="plain" onClick={() => onRig(withoutThings(rig), "rig things")}>
        Let each kit choose
      </button>
    </span>
  );
}
