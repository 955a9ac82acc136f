import type { Sharer } from "../answers";
import { changeRight, endSharing } from "../desk";
import { ColumnHeads } from "../shell/column-heads";
import { Failure } from "../shell/states";
import { May } from "../shell/right";
import { useAct } from "../shell/use-act";
import { date } from "../shell/when";
import { RIGHTS } from "./right-words";

interface SharersProps {
  readonly athlete: { readonly id: string; readonly name: string };
  readonly coaches: readonly Sharer[];
  readonly again: () => void;
}

/** Other coaches with a right to this athlete; the athlete's own coach changes and ends it. */
export function Sharers({ athlete, coaches, again }: SharersProps) {
  const act = useAct();
  if (coaches.length === 0) return <p class="lead">Nobody else has a right to {athlete.name}.</p>;
  const end = (coach: Sharer) => {
    const words = `${coach.name} reads and writes nothing of ${athlete.name} from now on. What was sent stays. Take the right back?`;
    if (window.confirm(words)) act.run(() => endSharing(athlete.id, coach.id), again);
  };
  const other = (coach: Sharer) => (coach.right === "read" ? "write" : "read");
  return (
    <>
      <table class="ruled">
        <ColumnHeads names={["Coach", "May", "Since"]} deed="Change" />
        <tbody>
          {coaches.map((coach) => (
            <tr key={coach.id}>
              <th scope="row">{coach.name}</th>
              <td data-head="May">{RIGHTS[coach.right].toLowerCase()}</td>
              <td data-head="Since">{date(coach.given_at)}</td>
              <td>
                <May needs="own">
                  <button
                    type="button"
                    class="plain"
                    disabled={act.busy}
                    onClick={() =>
                      act.run(() => changeRight(athlete.id, coach.id, other(coach)), again)
                    }
                  >
                    {coach.right === "read" ? "Let write" : "Let only read"}
                    <span class="sr-only">: {coach.name}</span>
                  </button>{" "}
                  <button
                    type="button"
                    class="plain"
                    disabled={act.busy}
                    onClick={() => end(coach)}
                  >
                    Take back<span class="sr-only">: {coach.name}</span>
                  </button>
                </May>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Failure fault={act.fault} />
    </>
  );
}
