/** A document that is edited as a whole and then saved: its state, and the bar with the button. */
import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

import { Refused, type Fault } from "../../api/client";
import { useDesk } from "../shell/desk-state";
import { May } from "../shell/right";
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
  const latest = useRef(document);
  latest.current = document;
  const submit = () =>
    act.run(
      () => save(document),
      (answer) => {
        // What was typed while it was on its way is not saved yet, and stays.
        if (latest.current === document) {
          setDocument(answer.document);
          setChanged(false);
          setSavedAt(desk.now());
        }
        onSaved(answer.document);
      },
    );
  const faults = act.fault instanceof Refused ? act.fault.faults : [];
  const change = (part: Partial<T>) => {
    setDocument((before) => ({ ...before, ...part }));
    setChanged(true);
  };
  const bar = (
    <May needs="write">
      <SaveBar
        what={what}
        busy={act.busy}
        changed={changed}
        savedAt={savedAt}
        fault={act.fault}
        onSave={submit}
      />
    </May>
  );
  return { document, change, faults, bar };
}

interface SaveBarProps {
  readonly what: string;
  readonly busy: boolean;
  readonly changed: boolean;
  readonly savedAt: number | null;
  readonly fault: unknown;
  readonly onSave: () => void;
}

function SaveBar({ what, busy, changed, savedAt, fault, onSave }: SaveBarProps) {
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (fault !== null) firstWrong(bar.current)?.focus();
  }, [fault]);
  const words = changed ? "Not saved yet." : savedAt === null ? "" : `Saved ${clock(savedAt)}.`;
  return (
    <div class="save-bar" ref={bar}>
      <button type="button" class="main" disabled={busy || !changed} onClick={onSave}>
        {busy ? "Saving …" : `Save the ${what}`}
      </button>
      {fault === null ? <span role="status">{words}</span> : <NotSaved fault={fault} />}
    </div>
  );
}

function NotSaved({ fault }: { readonly fault: unknown }) {
  const faults = fault instanceof Refused ? fault.faults : [];
  return (
    <div class="failure" role="alert">
      <p>
        Not saved. {inPlainWords(fault)}
        {faults.length === 0 && " What you have typed is still here."}
      </p>
      <FaultList faults={faults} />
    </div>
  );
}

/** The first field of this form that is at fault. */
function firstWrong(bar: HTMLElement | null): HTMLElement | null {
  return bar?.closest("main")?.querySelector<HTMLElement>("[aria-invalid]") ?? null;
}
