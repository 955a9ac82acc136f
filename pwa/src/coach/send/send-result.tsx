import type { SendAnswer, SquadLine } from "../answers";
import { counted } from "../shell/counted";
import { Link } from "../shell/link";
import { athletePath } from "../shell/route";
import { FaultList } from "../shell/states";

interface SendResultProps {
  readonly answer: SendAnswer;
  readonly athletes: readonly SquadLine[];
  readonly again: () => void;
}

export function SendResult({ answer, athletes, again }: SendResultProps) {
  const nameOf = (id: string) => athletes.find((each) => each.id === id)?.name ?? id;
  const noPhone = (id: string) => athletes.find((each) => each.id === id)?.devices === 0;
  return (
    <div role="status">
      {answer.sent.length > 0 && (
        <section>
          <h2>Sent</h2>
          <ul class="plain-list">
            {answer.sent.map((each) => (
              <li key={each.athlete}>
                <Link to={athletePath(each.athlete)}>{nameOf(each.athlete)}</Link>: revision{" "}
                {each.revision}, {counted(each.sessions, "session")}.
                {noPhone(each.athlete) && (
                  <>
                    {" "}
                    It waits for a phone:{" "}
                    <Link to={athletePath(each.athlete, "phones")}>make an invitation</Link>.
                  </>
                )}
              </li>
            ))}
          </ul>
        </section>
      )}
      {answer.refused.length > 0 && (
        <section>
          <h2>Not sent</h2>
          <ul class="plain-list">
            {answer.refused.map((each) => (
              <li key={each.athlete}>
                <Link to={athletePath(each.athlete, "person")}>{nameOf(each.athlete)}</Link>
                <FaultList faults={each.faults} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <button type="button" onClick={again}>
        Send to others
      </button>
    </div>
  );
}
