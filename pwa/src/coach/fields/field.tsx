/** What all fields share: a label, the unit behind, faults beneath. */
import type { ComponentChildren } from "preact";

import type { Fault } from "../../api/client";
import { FaultWords } from "../shell/states";

export interface FieldLook {
  readonly label: string;
  /** The label is for screen readers only, where the column or the sentence says it to the eye. */
  readonly quiet?: boolean;
  /** Width in figures or letters, as a class: w2 … w20. */
  readonly width?: Width;
  readonly unit?: string;
  readonly faults?: readonly Fault[];
}

export type Width = "w2" | "w3" | "w4" | "w6" | "w8" | "w12" | "w20" | "full";

interface FieldProps extends FieldLook {
  readonly id: string;
  readonly children: ComponentChildren;
  /** A fault seen while typing, before the server was asked. */
  readonly typed?: string | null;
}

export function Field({ id, label, quiet, width, unit, faults = [], typed, children }: FieldProps) {
  const wrong = faults.length > 0 || Boolean(typed);
  return (
    <div class={`field ${width ?? ""}${wrong ? " wrong" : ""}`}>
      <label for={id} class={quiet ? "sr-only" : "field-label"}>
        {label}
      </label>
      <span class="field-line">
        {children}
        {unit && <span class="unit">{unit}</span>}
      </span>
      {wrong && (
        <span class="field-fault" id={faultId(id)}>
          {typed && <span>{typed}</span>}
          {faults.map((fault) => (
            <span key={fault.what}>
              <FaultWords fault={fault} />
            </span>
          ))}
        </span>
      )}
    </div>
  );
}

/** The attributes that tie a control to its fault. */
export function faultProps(id: string, wrong: boolean) {
  return wrong ? ({ "aria-invalid": true, "aria-describedby": faultId(id) } as const) : {};
}

function faultId(id: string): string {
  return `${id}-fault`;
}
