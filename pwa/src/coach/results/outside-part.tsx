import type { OutsideResult } from "../answers";
import { ColumnHeads } from "../shell/column-heads";
import { counted } from "../shell/counted";
import { date } from "../shell/when";
import { doneInWords, effortInWords } from "./result-words";

/** Work that no plan speaks of. It is stored like any other, and says nothing of a maximum. */
export function OutsidePart({ outside }: { readonly outside: readonly OutsideResult[] }) {
  if (outside.length === 0) return null;
  return (
    <section>
      <h2>Outside the plan</h2>
      <p class="aside-note">
        A phone reported this work, and no session that was sent has a place for it. It is kept, and
        counts for no maximum. Ask the athlete what it was.
      </p>
      {outside.map((one) => (
        <Work key={`${one.revision} ${one.session} ${one.why}`} one={one} />
      ))}
    </section>
  );
}

function Work({ one }: { readonly one: OutsideResult }) {
  const effort = effortInWords(one);
  return (
    <details class="session-result" open>
      <summary>
        <b>{one.session}</b>
        {one.at && <span>{date(one.at)}</span>}
        <span class="soft">{counted(one.sets.length, "set")}</span>
        {effort && <span class="soft">{effort}</span>}
      </summary>
      <p class="aside-note">Why it is here: {one.why}.</p>
      {one.why_stopped && <p>Stopped: {one.why_stopped}</p>}
      {one.comment && <blockquote>{one.comment}</blockquote>}
      {one.sets.length > 0 && <Sets sets={one.sets} />}
    </details>
  );
}

function Sets({ sets }: Pick<OutsideResult, "sets">) {
  return (
    <table class="ruled figures set-results">
      <ColumnHeads names={["Set", "Done", "Mark"]} />
      <tbody>
        {sets.map(({ key, added_to, done }) => (
          <tr key={key}>
            <th scope="row">{added_to === null ? key : `added to ${added_to}`}</th>
            <td data-head="Done" class={done.kind === "skipped" ? "skipped" : "done"}>
              {doneInWords(done)}
            </td>
            <td data-head="Mark">{done.two_answers && "two answers"}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
