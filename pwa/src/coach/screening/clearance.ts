/** A clearance while it is written, and what of it is sent. */
import type { Clearance, ScreeningReason } from "../answers";

export type Limits = NonNullable<Clearance["limits"]>;
export type Prescription = NonNullable<Clearance["prescription"]>;

export interface ClearanceDraft {
  readonly by: string;
  readonly profession: Clearance["profession"] | "";
  readonly licence: string;
  readonly on: string;
  readonly until: string;
  readonly covers: readonly string[];
  readonly alone: boolean;
  readonly limits: Limits;
  readonly prescription: Partial<Prescription>;
}

export const BLANK: ClearanceDraft = {
  by: "",
  profession: "",
  licence: "",
  on: "",
  until: "",
  covers: [],
  alone: false,
  limits: {},
  prescription: {},
};

/** Without what was left empty: the server says at each field what it needs. */
export function clearanceOf(draft: ClearanceDraft): Partial<Clearance> {
  const { covers, alone, limits, prescription, ...said } = draft;
  const own = filled(prescription);
  return {
    ...(filled(said) as Partial<Clearance>),
    covers: [...covers],
    alone,
    ...(Object.keys(filled(limits)).length > 0 ? { limits: filled(limits) } : {}),
    ...(Object.keys(own).length > 0 ? { prescription: own as Prescription } : {}),
  };
}

/** Reasons that a clearance can name, those that still close first; each key once. */
export function coverable(reasons: readonly ScreeningReason[]): ScreeningReason[] {
  const byKey = new Map<string, ScreeningReason>();
  for (const reason of reasons) {
    if (reason.coverable && !byKey.has(reason.key)) byKey.set(reason.key, reason);
  }
  return [...byKey.values()];
}

/** Is one of the reasons open only for a clinician's own prescription? */
export function wantsPrescription(
  reasons: readonly ScreeningReason[],
  covers: readonly string[],
): boolean {
  return reasons.some(({ key, outcome }) => outcome === "clinical" && covers.includes(key));
}

/** Without what is empty or not said. */
export function filled<T extends object>(draft: T): Partial<T> {
  const said = Object.entries(draft).filter(([, value]) => value !== undefined && value !== "");
  return Object.fromEntries(said) as Partial<T>;
}
