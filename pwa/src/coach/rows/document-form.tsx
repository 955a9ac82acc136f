/** A document that is edited as a whole and then saved: its state, and the bar with the button. */
import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";

import { Refused, type Fault } from "../../api/client";
import { useDesk } from "../shell/desk-state";
import { inPlainWords } from "../shell/plain-words";
import { FaultList } from "../shell/states";
import { useAct } from "../shell/use-act";
import { clock } from "../shell/when";

export interface DocumentForm<T> {
  readonly document: T;
  readonly change: (part: Partial<T>) => void;
  readonly faults: readonly Fault[];
  readonly bar: ComponentChildren;
}

interface FormRules<T> {
  readonly begin: T;
  readonly what: string;
  readonly save: (document: T) => Promise<{ readonly document: T }>;
  readonly onSaved: (document: T) => void;
}

export function useDocumentForm<T extends object>(rules: FormRules<T>): DocumentForm<T> {
  const { begin, what, save, onSaved } = rules;
  const desk = useDesk();
  const act = useAct();
  const [document, setDocument] = useState(begin);
  const [changed, setChanged] = useState(false);
  const [savedAt, setSavedAt] = useState<number | null>(null);
  useEffect(() => {
    desk.unsaved.value = changed ? `The ${what} has changes that are not saved.` : null;
    return () => {
      desk.unsaved.value = null;
    };
  }, [changed]);
  const submit = () =>
    act.run(
      () => save(document),
      (answer) => {
        setDocument(answer.document);
        setChanged(false);
        setSavedAt(desk.now());
        onSaved(answer.document);
      },
    );
  const faults = act.fault instanceof Refused ? act.fault.faults : [];
  const change = (part: Partial<T>) => {
    setDocument((before) => ({ ...before, ...part }));
    setChanged(true);
  };
  const words = changed ? "Not saved yet." : savedAt === null ? "" : `Saved ${clock(savedAt)}.`;
  const bar = (
    <div class="save-bar">
      <button type="button" class="main" disabled={act.busy || !changed} onClick={submit}>
        {act.busy ? "Saving …" : `Save the ${what}`}
      </button>
      <span role="status">{words}</span>
      {act.fault !== null && (
        <div class="failure" role="alert">
          <p>Not saved. {inPlainWords(act.fault)} What you have typed is still here.</p>
          <FaultList faults={faults} />
        </div>
      )}
    </div>
  );
  return { document, change, faults, bar };
}
