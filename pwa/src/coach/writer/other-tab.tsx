import { useEffect, useState } from "preact/hooks";

import type { Block } from "../../api/types";
import { draftName, draftOf } from "../block/drafts";
import { block } from "../desk";
import { useDesk } from "../shell/desk-state";
import { keptName } from "../shell/kept";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";

interface OtherTabProps {
  readonly id: string;
  readonly onTake: (document: Block) => void;
}

/** Says that another tab writes the same block, before one of the two overwrites the other. */
export function OtherTab({ id, onTake }: OtherTabProps) {
  const desk = useDesk();
  const act = useAct();
  const [changed, setChanged] = useState(false);
  const coach = desk.coach.value?.id ?? "";
  useEffect(() => {
    // The browser tells this only to the tabs that did not write themselves.
    const hear = (event: StorageEvent) => {
      if (keptName(event) === draftName(coach, id)) setChanged(true);
    };
    window.addEventListener("storage", hear);
    return () => window.removeEventListener("storage", hear);
  }, [coach, id]);
  if (!changed) return null;
  const newest = async () => draftOf(desk.shelf, coach, id)?.document ?? (await block(id)).document;
  const take = () =>
    act.run(newest, (document) => {
      onTake(document);
      setChanged(false);
    });
  return (
    <div class="failure" role="alert">
      <p>
        This block is being changed in another tab as well. Whichever is typed into last is what the
        server keeps.
      </p>
      <button type="button" disabled={act.busy} onClick={take}>
        Take over the text from there
      </button>{" "}
      <button type="button" onClick={() => setChanged(false)}>
        Go on with this one
      </button>
      <Failure fault={act.fault} />
    </div>
  );
}
