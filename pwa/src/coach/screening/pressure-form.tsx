import type { MeasuredPressure } from "../answers";
import { within } from "../block/faults";
import { recordPressure } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import { TextField } from "../fields/text-field";
import { filled } from "./clearance";
import { RecordForm } from "./record-form";
import { SITE_WORDS } from "./record-words";
import type { PieceProps } from "./screening-part";

const BLANK: Partial<MeasuredPressure> = {};

const WORDS = [
  ["by", "Measured by", "w20", 80],
  ["position", "Position", "w12", 80],
  ["material", "Cuff, material", "w12", 40],
] as const;

const SITES = { "": "choose", ...SITE_WORDS };

/** A limb occlusion pressure that somebody trained has measured; it is of that cuff and position. */
export function PressureForm({ athlete, onPage }: PieceProps) {
  return (
    <section>
      <h2>Limb occlusion pressure</h2>
      <p class="aside-note">
        For work with a cuff and a gauge. Without a measured pressure a cuff stays at what an
        equation allows, because its error is large. Wraps have no pressure.
      </p>
      <RecordForm<Partial<MeasuredPressure>>
        title="Record a measured pressure"
        button="Record the pressure"
        blank={BLANK}
        record={(draft) => recordPressure(athlete.id, filled(draft))}
        onPage={onPage}
      >
        {(draft, change, faults) => (
          <div class="fields">
            <ChoiceField
              label="Limb"
              choices={SITES}
              value={draft.site ?? ""}
              faults={within(faults, "site")}
              onValue={(site) => change({ site })}
            />
            <NumberField
              label="Pressure that stops the pulse"
              unit="mmHg"
              width="w4"
              step={5}
              value={draft.mmhg}
              faults={within(faults, "mmhg")}
              onValue={(mmhg) => change({ mmhg })}
            />
            <TextField
              label="Measured on"
              type="date"
              value={draft.on ?? ""}
              faults={within(faults, "on")}
              onValue={(on) => change({ on })}
            />
            {WORDS.map(([field, label, width, longest]) => (
              <TextField
                key={field}
                label={label}
                width={width}
                longest={longest}
                value={draft[field] ?? ""}
                faults={within(faults, field)}
                onValue={(text) => change({ [field]: text })}
              />
            ))}
            <NumberField
              label="Cuff, width"
              unit="mm"
              width="w4"
              step={5}
              value={draft.width_mm}
              faults={within(faults, "width_mm")}
              onValue={(width_mm) => change({ width_mm })}
            />
          </div>
        )}
      </RecordForm>
    </section>
  );
}
