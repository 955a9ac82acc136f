import type { ScreeningPage } from "../answers";
import { calendarDate, date } from "../shell/when";
import { OutcomeMark } from "./outcome-mark";
import { urgentIn, type Urgent } from "./urgent";
import type { PieceProps } from "./screening-part";

/** What cannot wait, and whether occlusion work is open today. */
export function StandingPart({ athlete, page }: PieceProps) {
  const { lock, latest } = page;
  return (
    <section>
      <DoNow urgent={urgentIn(page)} name={athlete.name} />
      <h2>Occlusion work today</h2>
      <p class="lead">
        <OutcomeMark outcome={lock.outcome} /> {lock.open ? openInWords(lock) : "It is closed."}
      </p>
      {lock.as_prescribed && (
        <p>
          Open for the clinician’s own prescription only: nothing of it is worked out or moved here.
        </p>
      )}
      {latest === null && page.asked_at !== null && (
        <p>
          Asked on {date(page.asked_at)}, not answered yet. {athlete.name}’s phone shows the
          questions after its next sync, and sends the answers with the one after that.
        </p>
      )}
    </section>
  );
}

interface DoNowProps {
  readonly urgent: readonly Urgent[];
  readonly name: string;
}

/** What cannot wait, whatever becomes of the training. */
function DoNow({ urgent, name }: DoNowProps) {
  if (urgent.length === 0) return null;
  return (
    <div class="failure do-now" role="alert">
      <h2>Reach {name} now, and say</h2>
      <ul>
        {urgent.map(({ act, because }) => (
          <li key={act}>
            <b>{act}</b> {because.length > 0 && <span>Because of: {because.join("; ")}.</span>}
          </li>
        ))}
      </ul>
    </div>
  );
}

function openInWords({ until, company }: ScreeningPage["lock"]): string {
  const end = until === null ? "" : ` until ${calendarDate(until)}, if nothing happens`;
  const who = company ? ", and only with somebody there who can take the wraps off" : "";
  return `It is open${end}${who}.`;
}
