import { useId, useState } from "preact/hooks";

import type { Signing } from "../answers";
import { signScreening } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { LongTextField } from "../fields/text-field";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { stillMissing } from "./reading";
import type { PieceProps } from "./screening-part";

const AIMS = {
  training: "training",
  recovery: "recovery from an injury, operation or illness",
} as const;

interface SignFormProps extends PieceProps {
  readonly of: string;
  readonly needed: readonly string[];
  readonly ticked: ReadonlySet<string>;
  readonly noteNeeded: boolean;
}

/** The signature: possible once everything was ticked, and once there is the note it needs. */
export function SignForm({ athlete, onPage, of, needed, ticked, noteNeeded }: SignFormProps) {
  const act = useAct();
  const id = useId();
  const [note, setNote] = useState("");
  const [aim, setAim] = useState<Signing["aim"]>("training");
  const missing = stillMissing(needed, ticked, { needed: noteNeeded, text: note });
  const sign = (event: Event) => {
    event.preventDefault();
    if (missing === "") act.run(() => signScreening(athlete.id, { of, note, aim }), onPage);
  };
  return (
    <form class="signing" onSubmit={sign}>
      <h3>Your signature</h3>
      <ChoiceField label="What the work is for" choices={AIMS} value={aim} onValue={setAim} />
      {aim === "recovery" && (
        <p class="aside-note" role="status">
          Recovery is for the clinic. Signed with this aim the work stays closed until a clinician’s
          own prescription is recorded, and nothing of it is worked out here.
        </p>
      )}
      <LongTextField
        label={noteNeeded ? "Note: how you weigh the counted cautions" : "Note, if you want one"}
        width="full"
        longest={2000}
        value={note}
        onValue={setNote}
      />
      <Failure fault={act.fault} />
      <div class="bar">
        <button
          type="submit"
          class="main"
          disabled={act.busy || missing !== ""}
          aria-describedby={id}
        >
          I have read it
        </button>
        <span id={id} role="status">
          {missing ||
            "It says that you have read the answers, and opens nothing that needs a clinician."}
        </span>
      </div>
    </form>
  );
}
