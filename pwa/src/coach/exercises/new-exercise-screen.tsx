import { useRef } from "preact/hooks";

import type { OwnExercise } from "../answers";
import { addExercise } from "../desk";
import { useDocumentForm } from "../rows/document-form";
import { go, useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { EXERCISES, exercisePath } from "../shell/route";
import { BLANK, sent } from "./own";
import { OwnFields } from "./own-fields";
import { useLearnAnew } from "./use-catalogue";

/** An exercise of the coach's own, begun. */
export function NewExerciseScreen() {
  const desk = useDesk();
  const learn = useLearnAnew();
  const made = useRef("");
  const form = useDocumentForm<OwnExercise>({
    begin: BLANK,
    what: "exercise",
    save: async (document) => {
      made.current = (await addExercise(sent(document))).key;
      return { document };
    },
    onSaved: () => {
      desk.unsaved.value = null;
      void learn().finally(() => go(desk, exercisePath(made.current)));
    },
  });
  return (
    <Page title="Your own exercise" above={<Link to={EXERCISES}>Exercises</Link>}>
      <p class="lead">Written once, it stands in the writer among the others.</p>
      <OwnFields form={form} />
      {form.bar}
    </Page>
  );
}
