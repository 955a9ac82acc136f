import { useState } from "preact/hooks";

import type { CatalogueEntry } from "../answers";
import { setCues } from "../desk";
import { LongTextField } from "../fields/text-field";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLearnAnew } from "./use-catalogue";

interface OwnCuesProps {
  readonly exercise: CatalogueEntry;
  readonly onChanged: () => void;
}

/** A coach's own cues, in place of the catalogue's; the first of them is what a phone shows. */
export function OwnCues({ exercise, onChanged }: OwnCuesProps) {
  const act = useAct();
  const learn = useLearnAnew();
  const [text, setText] = useState(exercise.cues.join("\n"));
  const save = (cues: readonly string[]) =>
    act.run(
      () => setCues(exercise.key, cues),
      () => void learn().finally(onChanged),
    );
  return (
    <details>
      <summary>{exercise.own_cues ? "Change your cues" : "Write your own cues"}</summary>
      <LongTextField
        label="One to a line; a phone shows the first"
        value={text}
        onValue={setText}
      />
      <div class="bar">
        <button type="button" disabled={act.busy} onClick={() => save(linesOf(text))}>
          Save the cues
        </button>
        {exercise.own_cues && (
          <button type="button" class="plain" disabled={act.busy} onClick={() => save([])}>
            Back to the catalogue’s
          </button>
        )}
      </div>
      <Failure fault={act.fault} />
    </details>
  );
}

function linesOf(text: string): string[] {
  return text
    .split("\n")
    .map((line) => line.trim())
    .filter(Boolean);
}
