import type { LogIn } from "../answers";
import { logIns, revokeLogIn } from "../desk";
import { ColumnHeads } from "../shell/column-heads";
import { useDesk } from "../shell/desk-state";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLoad } from "../shell/use-load";
import { dayAndClock } from "../shell/when";
import { browserInWords } from "./browser-words";

/** Every browser in which the coach is logged in; any of them can be ended. */
export function LogIns() {
  const load = useLoad("log-ins", logIns);
  return (
    <section>
      <h2>Where you are logged in</h2>
      <Loaded load={load} what="log-ins">
        {(list) => <Table list={list} again={load.again} />}
      </Loaded>
    </section>
  );
}

interface TableProps {
  readonly list: readonly LogIn[];
  readonly again: () => void;
}

function Table({ list, again }: TableProps) {
  const act = useAct();
  const now = useDesk().now();
  return (
    <>
      <table class="ruled">
        <ColumnHeads names={["Browser", "Last used", "Ends"]} deed="End" />
        <tbody>
          {list.map((each) => (
            <tr key={each.id}>
              <th scope="row">{browserInWords(each.agent)}</th>
              <td data-head="Last used">{dayAndClock(each.last_used_at, now)}</td>
              <td data-head="Ends">{dayAndClock(each.expires_at, now)}</td>
              <td>
                {each.this_one ? (
                  "this one"
                ) : (
                  <button
                    type="button"
                    class="plain"
                    disabled={act.busy}
                    onClick={() => act.run(() => revokeLogIn(each.id), again)}
                  >
                    Log out there<span class="sr-only">: {browserInWords(each.agent)}</span>
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Failure fault={act.fault} />
    </>
  );
}
