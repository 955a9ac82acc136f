import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

import { Refused, type Fault } from "../../api/client";
import type { ScreeningPage } from "../answers";
import { inPlainWords } from "../shell/plain-words";
import { FaultList, Said } from "../shell/states";
import { useAct } from "../shell/use-act";

interface RecordFormProps<Draft> {
  readonly title: string;
  readonly button: string;
  readonly blank: Draft;
  readonly record: (draft: Draft) => Promise<ScreeningPage>;
  readonly onPage: (page: ScreeningPage) => void;
  readonly children: (
    draft: Draft,
    change: (part: Partial<Draft>) => void,
    faults: readonly Fault[],
  ) => ComponentChildren;
}

/** Something to be recorded: opened when wanted, refused at its fields, empty again when kept. */
export function RecordForm<Draft extends object>(props: RecordFormProps<Draft>) {
  const { title, button, blank, record, onPage, children } = props;
  const act = useAct();
  const form = useRef<HTMLFormElement>(null);
  const [draft, setDraft] = useState(blank);
  const [kept, setKept] = useState(false);
  useEffect(() => {
    if (act.fault !== null) form.current?.querySelector<HTMLElement>("[aria-invalid]")?.focus();
  }, [act.fault]);
  const faults = act.fault instanceof Refused ? act.fault.faults : [];
  const change = (part: Partial<Draft>) => {
    setKept(false);
    setDraft((before) => ({ ...before, ...part }));
  };
  const submit = (event: Event) => {
    event.preventDefault();
    act.run(
      () => record(draft),
      (page) => {
        setDraft(blank);
        setKept(true);
        onPage(page);
      },
    );
  };
  return (
    <details class="record-form">
      <summary>{title}</summary>
      <form ref={form} onSubmit={submit} noValidate>
        {children(draft, change, faults)}
        <NotRecorded fault={act.fault} />
        <button type="submit" disabled={act.busy}>
          {button}
        </button>
        {kept && <Said>Recorded.</Said>}
      </form>
    </details>
  );
}

function NotRecorded({ fault }: { readonly fault: unknown }) {
  if (fault === null) return null;
  const faults = fault instanceof Refused ? fault.faults : [];
  return (
    <div class="failure" role="alert">
      <p>Not recorded. {inPlainWords(fault)}</p>
      <FaultList faults={faults} />
    </div>
  );
}
