import type { Fault } from "../../api/client";
import type { ScreeningReason } from "../answers";
import { within } from "../block/faults";
import { recordClearance } from "../desk";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { TextField } from "../fields/text-field";
import { FaultList } from "../shell/states";
import { BLANK, clearanceOf, coverable, wantsPrescription, type ClearanceDraft } from "./clearance";
import { ClinicianLimits, PrescriptionFields } from "./clinician-fields";
import { OutcomeMark } from "./outcome-mark";
import { RecordForm } from "./record-form";
import type { PieceProps } from "./screening-part";

const PROFESSIONS = {
  "": "choose",
  doctor: "doctor",
  physiotherapist: "physiotherapist",
  "nurse-practitioner": "nurse practitioner",
} as const;

export interface FieldsProps {
  readonly draft: ClearanceDraft;
  readonly change: (part: Partial<ClearanceDraft>) => void;
  readonly faults: readonly Fault[];
}

/** A licensed clinician's word, written down with everything that makes it one. */
export function ClearanceForm({ athlete, page, onPage }: PieceProps) {
  const reasons = coverable(page.reasons);
  if (reasons.length === 0) return null;
  return (
    <section>
      <h2>A clinician’s clearance</h2>
      <p class="aside-note">
        Write down what a licensed clinician has decided about {athlete.name}, and keep the
        clinician’s own paper. Your name is not taken here, nor is anybody’s without a licence.
      </p>
      <RecordForm
        title="Record a clearance"
        button="Record the clearance"
        blank={BLANK}
        record={(draft) => recordClearance(athlete.id, clearanceOf(draft))}
        onPage={onPage}
      >
        {(draft, change, faults) => (
          <>
            <Who draft={draft} change={change} faults={faults} />
            <Covers draft={draft} change={change} faults={faults} reasons={reasons} />
            {wantsPrescription(reasons, draft.covers) && (
              <PrescriptionFields draft={draft} change={change} faults={faults} />
            )}
            <ClinicianLimits draft={draft} change={change} faults={faults} />
          </>
        )}
      </RecordForm>
    </section>
  );
}

function Who({ draft, change, faults }: FieldsProps) {
  return (
    <div class="fields">
      <TextField
        label="Clinician"
        width="w20"
        longest={80}
        value={draft.by}
        faults={within(faults, "by")}
        onValue={(by) => change({ by })}
      />
      <ChoiceField<ClearanceDraft["profession"]>
        label="Profession"
        choices={PROFESSIONS}
        value={draft.profession}
        faults={within(faults, "profession")}
        onValue={(profession) => change({ profession })}
      />
      <TextField
        label="Licence"
        width="w12"
        longest={80}
        value={draft.licence}
        faults={within(faults, "licence")}
        onValue={(licence) => change({ licence })}
      />
      <TextField
        label="Given on"
        type="date"
        value={draft.on}
        faults={within(faults, "on")}
        onValue={(on) => change({ on })}
      />
      <TextField
        label="Holds until"
        type="date"
        value={draft.until}
        faults={within(faults, "until")}
        onValue={(until) => change({ until })}
      />
    </div>
  );
}

function Covers(props: FieldsProps & { readonly reasons: readonly ScreeningReason[] }) {
  const { draft, change, faults, reasons } = props;
  const put = (key: string, on: boolean) =>
    change({ covers: on ? [...draft.covers, key] : draft.covers.filter((each) => each !== key) });
  const wrong = within(faults, "covers");
  return (
    <fieldset class="covers">
      <legend>What the clinician was told of, and clears</legend>
      {reasons.map(({ key, words, outcome }) => (
        <label class="truth tick" key={key}>
          <input
            type="checkbox"
            checked={draft.covers.includes(key)}
            aria-invalid={wrong.length > 0 || undefined}
            onChange={(event) => put(key, event.currentTarget.checked)}
          />
          <span>
            {words} <OutcomeMark outcome={outcome} />
          </span>
        </label>
      ))}
      <FaultList faults={wrong} at="covers" />
      <TruthField
        label="The clinician says that it holds for training alone too"
        value={draft.alone}
        onValue={(alone) => change({ alone })}
      />
    </fieldset>
  );
}
