import { useState } from "preact/hooks";

import type { Message } from "../answers";
import { useDesk } from "../shell/desk-state";
import { dayAndClock } from "../shell/when";

const AT_ONCE = 3;

/** What the athlete wrote, newest first. */
export function MessagesPart({ messages }: { readonly messages: readonly Message[] }) {
  const [all, setAll] = useState(false);
  const now = useDesk().now();
  if (messages.length === 0) return null;
  const shown = all ? messages : messages.slice(0, AT_ONCE);
  return (
    <section>
      <h2>Messages</h2>
      {shown.map(({ id, at, text }) => (
        <figure key={id} class="message">
          <blockquote>{text}</blockquote>
          <figcaption class="soft">{dayAndClock(at, now)}</figcaption>
        </figure>
      ))}
      {shown.length < messages.length && (
        <button type="button" onClick={() => setAll(true)}>
          Show earlier ones
        </button>
      )}
    </section>
  );
}
