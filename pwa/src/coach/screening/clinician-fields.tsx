import type { OcclusionGuide } from "../answers";
import { within } from "../block/faults";
import { occlusionGuide } from "../desk";
import { NumberField } from "../fields/number-field";
import { LongTextField, TextField } from "../fields/text-field";
import { useLoad } from "../shell/use-load";
import type { Limits, Prescription } from "./clearance";
import type { FieldsProps } from "./clearance-form";

const LIMITS = [
  ["load_percent", "Load, at most", "% of the maximum"],
  ["wear_minutes", "Worn, at most", "min"],
  ["days_a_week", "Days", "a week"],
  ["tightness", "Tightness, at most", "of 10"],
  ["pressure_percent", "Pressure, at most", "% of occlusion"],
] as const satisfies readonly (readonly [keyof OcclusionGuide["limits"], string, string])[];

const WHOLE = new Set<string>(["days_a_week", "tightness"]);

/** What the clinician allows: what is left empty stays at the product's own limits. */
export function ClinicianLimits({ draft, change, faults }: FieldsProps) {
  const load = useLoad("occlusion guide", occlusionGuide);
  const own = load.now.state === "ready" ? load.now.value.limits : null;
  const put = (part: Partial<Limits>) => change({ limits: { ...draft.limits, ...part } });
  return (
    <fieldset>
      <legend>The clinician’s limits</legend>
      <p class="aside-note">Empty means the limits of this program. They only get tighter.</p>
      <div class="fields">
        {LIMITS.map(([field, label, unit]) => (
          <NumberField
            key={field}
            label={label}
            unit={unit}
            width="w3"
            usual={own?.[field]}
            whole={WHOLE.has(field)}
            value={draft.limits[field]}
            faults={within(faults, `limits.${field}`)}
            onValue={(value) => put({ [field]: value })}
          />
        ))}
        <LongTextField
          label="In the clinician’s words"
          width="full"
          longest={1000}
          value={draft.limits.in_words ?? ""}
          onValue={(in_words) => put({ in_words })}
        />
      </div>
    </fieldset>
  );
}

const WORDS = [
  ["cuff", "Cuff", 80],
  ["material", "Material", 40],
  ["pressure", "Pressure, as prescribed", 200],
] as const satisfies readonly (readonly [keyof Prescription, string, number])[];

/** Work for the clinic is kept as the clinician wrote it, with its cuff. */
export function PrescriptionFields({ draft, change, faults }: FieldsProps) {
  const own = draft.prescription;
  const put = (part: Partial<Prescription>) => change({ prescription: { ...own, ...part } });
  return (
    <fieldset>
      <legend>The clinician’s own prescription</legend>
      <p class="aside-note">
        Work for the clinic opens only with it. It is kept as written: no load of it is worked out,
        moved or swapped here.
      </p>
      <div class="fields">
        {WORDS.map(([field, label, longest]) => (
          <TextField
            key={field}
            label={label}
            width="w12"
            longest={longest}
            value={own[field] ?? ""}
            faults={within(faults, `prescription.${field}`)}
            onValue={(text) => put({ [field]: text })}
          />
        ))}
        <NumberField
          label="Width"
          unit="mm"
          width="w4"
          value={own.width_mm}
          faults={within(faults, "prescription.width_mm")}
          onValue={(width_mm) => put({ width_mm })}
        />
        <LongTextField
          label="The work, as written"
          width="full"
          longest={500}
          value={own.as_written ?? ""}
          faults={within(faults, "prescription.as_written")}
          onValue={(as_written) => put({ as_written })}
        />
      </div>
    </fieldset>
  );
}
