import { useState } from "preact/hooks";

import type { Block } from "../../api/types";
import { newBlock, readBlock } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { LongTextField } from "../fields/text-field";
import { counted } from "../shell/counted";
import { go, useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { BLOCKS, blockPath } from "../shell/route";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { formatOf, type Format } from "./format";

const FORMATS = { json: "JSON", csv: "CSV, one row a set" } as const;

/** A block from a file or from pasted text: read first, taken in once it is sound. */
export function TakeInScreen() {
  const act = useAct();
  const [text, setText] = useState("");
  const [format, setFormat] = useState<Format>("json");
  const [document, setDocument] = useState<Block | null>(null);
  const write = (next: string, name = "") => {
    setText(next);
    setFormat(formatOf(next, name));
    setDocument(null);
    act.clear();
  };
  const read = (event: Event) => {
    event.preventDefault();
    act.run(
      () => readBlock(text, format),
      (answer) => setDocument(answer.document),
    );
  };
  return (
    <Page title="Take in a block" above={<Link to={BLOCKS}>Blocks</Link>}>
      <form class="take-in" onSubmit={read}>
        <FileField onText={write} />
        <LongTextField
          label="or paste the text"
          width="full"
          rows={10}
          value={text}
          onValue={write}
        />
        <ChoiceField label="It is" choices={FORMATS} value={format} onValue={setFormat} />
        <button type="submit" class={document ? "" : "main"} disabled={act.busy || !text.trim()}>
          {act.busy ? "Reading …" : "Read it"}
        </button>
      </form>
      {act.fault !== null && (
        <>
          <Failure fault={act.fault} />
          <p class="aside-note">Nothing was taken in. Mend the text above and read it again.</p>
        </>
      )}
      {document && <Sound document={document} />}
    </Page>
  );
}

function FileField({ onText }: { readonly onText: (text: string, name: string) => void }) {
  const take = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (file) onText(await file.text(), file.name);
  };
  return (
    <div class="field">
      <label>
        <span class="field-label">A file</span>
        <input
          type="file"
          accept=".json,.csv,application/json,text/csv"
          onChange={(event) => void take(event.currentTarget)}
        />
      </label>
    </div>
  );
}

function Sound({ document }: { readonly document: Block }) {
  const desk = useDesk();
  const act = useAct();
  const sessions = document.weeks.flatMap((week) => week.sessions);
  const sets = sessions.flatMap((session) => session.exercises.flatMap((each) => each.sets));
  const take = () =>
    act.run(
      () => newBlock(document),
      (answer) => go(desk, blockPath(answer.id)),
    );
  return (
    <section class="apart" role="status">
      <h2>{document.name}</h2>
      <p>
        Sound: {counted(document.weeks.length, "week")}, {counted(sessions.length, "session")},{" "}
        {counted(sets.length, "set")}.
      </p>
      <Failure fault={act.fault} />
      <button type="button" class="main" disabled={act.busy} onClick={take}>
        Take it in
      </button>
    </section>
  );
}
