import { useMemo, useState } from "preact/hooks";

import { draft } from "../../offline/entry";
import { placed } from "../../offline/ledger-view";
import { useApp } from "../app-context";
import { useInView } from "../device/view-time";
import { usePhoneState } from "../hooks";
import { sendable } from "../words/text";
import { moment } from "../words/times";

const SHOWN = 3;

/** A word to the coach, and what became of the last ones. */
export function MessagePart() {
  const { phone, clock } = useApp();
  const { identity } = usePhoneState();
  const [text, setText] = useState("");
  const [sent, setSent] = useState(0);
  const id = useMemo(() => phone.newId(), [phone, sent]);
  const said = sendable(text);

  async function send(): Promise<void> {
    if (await phone.record(draft(id, clock.now(), "message", { text: said }))) {
      setText("");
      setSent(sent + 1);
    }
  }

  return (
    <section class="stack" aria-labelledby="message">
      <h2 id="message" class="section-title">
        A message
      </h2>
      <label class="field">
        <span>To {identity?.coach ?? "your coach"}</span>
        <textarea
          rows={3}
          maxLength={4000}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <button type="button" class="button" disabled={said === ""} onClick={() => void send()}>
        Send it
      </button>
      <Told />
    </section>
  );
}

function Told() {
  const state = usePhoneState();
  const now = useInView();
  const told = placed(state)
    .filter(({ entry }) => entry.kind === "message")
    .sort((one, other) => (one.entry.id < other.entry.id ? 1 : -1))
    .slice(0, SHOWN);
  return (
    <div class="stack" aria-live="polite">
      {told.map(({ entry, position }) => (
        <figure key={entry.id} class="message">
          <blockquote>{(entry.body as { readonly text: string }).text}</blockquote>
          <figcaption>
            {moment(Date.parse(entry.at), now)},{" "}
            {position === null ? "on this phone, goes with the next network" : "with your coach"}
          </figcaption>
        </figure>
      ))}
    </div>
  );
}
