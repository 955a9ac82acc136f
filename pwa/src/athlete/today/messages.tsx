import { toMs } from "../../api/sync";
import type { PhoneState } from "../../offline/phone";
import { newsOf } from "../hooks";
import { moment } from "../words/times";

const SHOWN = 3;

/** The newest words from the coach. */
export function Messages({ state, now }: { readonly state: PhoneState; readonly now: number }) {
  const messages = newsOf(state, "message").slice(-SHOWN).toReversed();
  if (messages.length === 0) return null;
  return (
    <section aria-label="Messages">
      {messages.map(({ text, at, from }) => (
        <figure key={`${toMs(at)} ${text}`} class="message">
          <blockquote>{text}</blockquote>
          <figcaption>
            {from}, {moment(toMs(at), now)}
          </figcaption>
        </figure>
      ))}
    </section>
  );
}
