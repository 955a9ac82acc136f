import type { ScreeningPage } from "../answers";
import { calendarDate, date } from "../shell/when";
import { OutcomeMark } from "./outcome-mark";
import type { PieceProps } from "./screening-part";

/** What cannot wait, and whether occlusion work is open today. */
export function StandingPart({ athlete, page }: PieceProps) {
  const { lock, latest } = page;
  return (
    <section>
      <DoNow lines={lock.do_now} name={athlete.name} />
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
  readonly lines: readonly string[];
  readonly name: string;
}

/** Urgent, whatever becomes of the training. */
function DoNow({ lines, name }: DoNowProps) {
  if (lines.length === 0) return null;
  return (
    <div class="failure do-now" role="alert">
      <h2>Do now: reach {name}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
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
