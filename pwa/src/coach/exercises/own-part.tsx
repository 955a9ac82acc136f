import type { CatalogueEntry, OwnExercise } from "../answers";
import { archiveExercise, changeExercise, removeExercise, restoreExercise } from "../desk";
import { useDocumentForm } from "../rows/document-form";
import { go, useDesk } from "../shell/desk-state";
import { EXERCISES } from "../shell/route";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { sent, written } from "./own";
import { OwnFields } from "./own-fields";
import { useLearnAnew } from "./use-catalogue";

interface OwnPartProps {
  readonly exercise: CatalogueEntry;
  readonly onChanged: () => void;
}

/** What a coach may do with an own exercise: change it, archive it, remove it. */
export function OwnPart({ exercise, onChanged }: OwnPartProps) {
  return (
    <section class="apart">
      <h2>Your own</h2>
      <Keeping exercise={exercise} onChanged={onChanged} />
      <details>
        <summary>Change it</summary>
        <Change exercise={exercise} onChanged={onChanged} />
      </details>
    </section>
  );
}

function Change({ exercise, onChanged }: OwnPartProps) {
  const learn = useLearnAnew();
  const form = useDocumentForm<OwnExercise>({
    begin: written(exercise),
    what: "exercise",
    save: async (document) => {
      await changeExercise(exercise.key, sent(document));
      return { document };
    },
    onSaved: () => void learn().finally(onChanged),
  });
  return (
    <>
      <OwnFields form={form} />
      {form.bar}
    </>
  );
}

function Keeping({ exercise: { key, name, archived }, onChanged }: OwnPartProps) {
  const desk = useDesk();
  const act = useAct();
  const learn = useLearnAnew();
  const shelve = () =>
    act.run(
      () => (archived ? restoreExercise(key) : archiveExercise(key)),
      () => void learn().finally(onChanged),
    );
  const remove = () => {
    if (!window.confirm(`Remove ${name} for good?`)) return;
    act.run(
      () => removeExercise(key),
      () => void learn().finally(() => go(desk, EXERCISES)),
    );
  };
  return (
    <>
      {archived && <p>Archived: the writer does not offer it. What names it goes on as before.</p>}
      <div class="bar">
        <button type="button" disabled={act.busy} onClick={shelve}>
          {archived ? "Offer it again" : "Archive"}
        </button>
        <button type="button" class="plain" disabled={act.busy} onClick={remove}>
          Remove for good
        </button>
      </div>
      <Failure fault={act.fault} />
    </>
  );
}
