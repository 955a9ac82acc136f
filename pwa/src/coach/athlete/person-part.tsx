import type { Athlete } from "../../api/types";
import type { AthletePage } from "../answers";
import { saveAthlete } from "../desk";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import { LongTextField, TextField } from "../fields/text-field";
import { useDocumentForm, type DocumentForm } from "../rows/document-form";
import { within } from "../block/faults";
import { Link } from "../shell/link";
import { Writable } from "../shell/right";
import { athletePath } from "../shell/route";
import { MaximaEditor, MaximaNow } from "./maxima";
import { PersonMore } from "./person-more";

interface PersonPartProps {
  readonly page: AthletePage;
  readonly onSaved: () => void;
}

/** Name, measures, maxima: what the loads and the checks go by. */
export function PersonPart({ page, onSaved }: PersonPartProps) {
  const form = useDocumentForm<Athlete>({
    begin: page.document,
    what: "athlete",
    save: (document) => saveAthlete(page.id, document),
    onSaved,
  });
  return (
    <>
      <section>
        <h2>Maxima</h2>
        <MaximaNow maxima={page.maxima} />
        <Writable>
          <MaximaEditor form={form} />
        </Writable>
      </section>
      <section>
        <h2>Measures</h2>
        <Writable>
          <Measures form={form} />
        </Writable>
      </section>
      <Writable>
        <PersonMore form={form} />
      </Writable>
      <section>
        <h2>Screening</h2>
        <p class="aside-note">
          {page.screening.text} <Link to={athletePath(page.id, "screening")}>Screening</Link>
        </p>
      </section>
      {form.bar}
    </>
  );
}

const EXPERIENCE = { novice: "Novice", trained: "Trained" } as const;
const UNITS = { kg: "kilograms", lb: "pounds" } as const;

function Measures({ form }: { readonly form: DocumentForm<Athlete> }) {
  const { document, change } = form;
  const at = (field: keyof Athlete) => within(form.faults, field);
  return (
    <div class="fields">
      <TextField
        label="Name"
        width="w20"
        longest={80}
        value={document.name}
        faults={at("name")}
        onValue={(name) => change({ name })}
      />
      <TextField
        label="Born"
        type="date"
        value={document.born ?? ""}
        faults={at("born")}
        onValue={(born) => change({ born: born || undefined })}
      />
      <NumberField
        label="Stature"
        unit="cm"
        width="w4"
        value={document.stature_m === undefined ? undefined : document.stature_m * 100}
        faults={at("stature_m")}
        onValue={(cm) => change({ stature_m: cm === undefined ? undefined : cm / 100 })}
      />
      <NumberField
        label="Body mass"
        unit="kg"
        width="w4"
        step={0.5}
        value={document.body_mass_kg}
        faults={at("body_mass_kg")}
        onValue={(body_mass_kg) => change({ body_mass_kg })}
      />
      <ChoiceField
        label="Experience"
        choices={EXPERIENCE}
        value={document.experience ?? "trained"}
        faults={at("experience")}
        onValue={(experience) => change({ experience })}
      />
      <NumberField
        label="Time for a session"
        unit="min"
        width="w4"
        step={5}
        whole
        value={document.session_minutes}
        faults={at("session_minutes")}
        onValue={(session_minutes) => change({ session_minutes })}
      />
      <ChoiceField
        label="Reads loads in"
        choices={UNITS}
        value={document.pounds ? "lb" : "kg"}
        onValue={(unit) => change({ pounds: unit === "lb" })}
      />
      <TruthField
        label="Trains alone, without a spotter"
        value={document.trains_alone ?? true}
        onValue={(trains_alone) => change({ trains_alone })}
      />
      <LongTextField
        label="Notes"
        width="full"
        longest={4000}
        value={document.notes ?? ""}
        faults={at("notes")}
        onValue={(notes) => change({ notes: notes || undefined })}
      />
    </div>
  );
}
