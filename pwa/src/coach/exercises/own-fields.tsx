import type { OwnExercise } from "../answers";
import { within } from "../block/faults";
import { ChoiceField, TruthField } from "../fields/choice-field";
import type { Width } from "../fields/field";
import { NumberField } from "../fields/number-field";
import { TextField } from "../fields/text-field";
import { muscleName } from "../monitoring/muscles";
import type { DocumentForm } from "../rows/document-form";
import { ExercisesField } from "../rows/exercises-field";
import { ListField } from "../rows/list-field";
import { useDesk } from "../shell/desk-state";
import { inLine, outOfLine } from "./lines";
import { musclesOf } from "./search";
import { IMPLEMENTS, muscleKey } from "./words";

interface OwnFieldsProps {
  readonly form: DocumentForm<OwnExercise>;
}

/** Everything that the catalogue knows of an exercise, to be written by the coach. */
export function OwnFields({ form }: OwnFieldsProps) {
  return (
    <div class="own-fields">
      <div class="fields">
        <TextField
          label="Name"
          width="w20"
          longest={80}
          value={form.document.name}
          faults={within(form.faults, "name")}
          onValue={(name) => form.change({ name })}
        />
        <ChoiceField
          label="What is lifted"
          choices={IMPLEMENTS}
          value={form.document.implement}
          faults={within(form.faults, "implement")}
          onValue={(implement) => form.change({ implement })}
        />
      </div>
      <Muscles form={form} />
      <div class="fields">
        <Words form={form} field="needs" label="Needs, with commas between" hint="bench, box" />
        <Words form={form} field="cues" label="Cues, with semicolons between" between=";" />
        <ExercisesField
          label="Instead, with semicolons between"
          width="full"
          value={form.document.alternatives}
          faults={within(form.faults, "alternatives")}
          onValue={(alternatives) => form.change({ alternatives })}
        />
      </div>
      <Way form={form} />
      <Marks form={form} />
    </div>
  );
}

function Muscles({ form }: OwnFieldsProps) {
  const names = musclesOf(useDesk().exercises.value).map((one) => muscleName(one).toLowerCase());
  return (
    <>
      <div class="fields">
        <Words form={form} field="prime" label="Works, with commas between" hint="quads, glutes" />
        <Words form={form} field="helpers" label="Helped by" hint="trunk" />
      </div>
      <p class="aside-note">Muscles: {names.join(", ")}.</p>
    </>
  );
}

interface WordsProps extends OwnFieldsProps {
  readonly field: "needs" | "cues" | "prime" | "helpers";
  readonly label: string;
  readonly hint?: string;
  readonly between?: "," | ";";
}

function Words({ form, field, label, hint, between = "," }: WordsProps) {
  const muscles = field === "prime" || field === "helpers";
  const width: Width = muscles ? "w20" : "full";
  return (
    <ListField<readonly string[]>
      label={label}
      width={width}
      hint={hint}
      value={form.document[field]}
      faults={within(form.faults, field)}
      write={(words) =>
        inLine(muscles ? words.map((one) => muscleName(one).toLowerCase()) : words, between)
      }
      read={(text) => outOfLine(text, between).map((one) => (muscles ? muscleKey(one) : one))}
      onValue={(words) => form.change({ [field]: words })}
    />
  );
}

function Way({ form }: OwnFieldsProps) {
  const { document, change, faults } = form;
  return (
    <>
      <div class="fields">
        <NumberField
          label="Hands start at"
          unit="% of stature"
          width="w4"
          value={percent(document.start_share)}
          faults={within(faults, "start_share")}
          onValue={(one) => change({ start_share: share(one) })}
        />
        <NumberField
          label="Range"
          unit="% of stature"
          width="w4"
          value={percent(document.range_share)}
          faults={within(faults, "range_share")}
          onValue={(one) => change({ range_share: share(one) })}
        />
        <TruthField
          label="Hands go down, as in a pulldown"
          value={document.hands_sink}
          onValue={(hands_sink) => change({ hands_sink })}
        />
        <TruthField
          label="Wants height, as an overhead press"
          value={document.overhead}
          onValue={(overhead) => change({ overhead })}
        />
      </div>
      <p class="aside-note">
        Bands, chains and the landmine rest on these. Hands that hang are at 42, shoulders at 82, a
        bar on the floor at 13. Tape readings of an athlete replace them.
      </p>
    </>
  );
}

function Marks({ form }: OwnFieldsProps) {
  const { document, change } = form;
  return (
    <div class="fields">
      <TruthField
        label="One side at a time"
        value={document.one_sided}
        onValue={(one_sided) => change({ one_sided })}
      />
      <TruthField
        label="A failed repetition comes to rest on the lifter: needs safeties"
        value={document.needs_safeties}
        onValue={(needs_safeties) => change({ needs_safeties })}
      />
    </div>
  );
}

function percent(part: number | null): number | undefined {
  return part === null ? undefined : part * 100;
}

function share(whole: number | undefined): number | null {
  return whole === undefined ? null : whole / 100;
}
