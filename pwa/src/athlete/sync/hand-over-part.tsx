import { useState } from "preact/hooks";

import { type HandOver, handOver } from "../../offline/hand-over";
import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { count } from "../words/sets";

/** All that is unsent as a file, to be given to the coach by any way there is. */
export function HandOverPart() {
  const state = usePhoneState();
  const { clock } = useApp();
  const [done, setDone] = useState("");
  const file = handOver(state, clock.now());
  if (!file) {
    return (
      <section class="stack" aria-label="Hand over by file">
        <h2 class="section-title">Hand over by file</h2>
        <p>Everything is sent. Should no network come for days, what is unsent is offered here.</p>
      </section>
    );
  }
  const many = count(file.count, "entry", "entries");
  return (
    <section class="stack" aria-label="Hand over by file">
      <h2 class="section-title">Hand over by file</h2>
      <p>
        {many} that the server lacks, in one file. Give it to {state.identity?.coach} by any way:
        message, cable, another phone. It holds no password.
      </p>
      <HandOverButtons file={file} onDone={setDone} />
      <p aria-live="polite">{done}</p>
    </section>
  );
}

interface ButtonsProps {
  readonly file: HandOver;
  readonly onDone: (words: string) => void;
}

export function HandOverButtons({ file, onDone }: ButtonsProps) {
  const shared = shareable(file);
  async function share(what: File): Promise<void> {
    try {
      await navigator.share({ files: [what] });
      onDone("Handed on. It all stays here until the server has it; once more does no harm.");
    } catch (fault) {
      if (!(fault instanceof DOMException && fault.name === "AbortError"))
        onDone("Sharing did not work here. Save the file instead.");
    }
  }
  return (
    <div class="row">
      {shared && (
        <button type="button" class="button" onClick={() => void share(shared)}>
          Share the file
        </button>
      )}
      <button
        type="button"
        class="button"
        onClick={() => {
          save(file);
          onDone(`Saved as ${file.name}. It all stays here too, until the server has it.`);
        }}
      >
        Save the file
      </button>
    </div>
  );
}

/** Some browsers share text but no JSON. */
function shareable({ name, text }: HandOver): File | null {
  const files = [
    new File([text], name, { type: "application/json" }),
    new File([text], `${name}.txt`, { type: "text/plain" }),
  ];
  return files.find((each) => navigator.canShare?.({ files: [each] })) ?? null;
}

const KEPT_MS = 60_000;

function save({ name, text }: HandOver): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
}
