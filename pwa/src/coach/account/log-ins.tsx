import { useEffect, useRef, useState } from "preact/hooks";

import { Refused } from "../../api/client";
import type { LogIn } from "../answers";
import { within } from "../block/faults";
import { revokeLogIn } from "../desk";
import { TextField } from "../fields/text-field";
import { ColumnHeads } from "../shell/column-heads";
import { useDesk } from "../shell/desk-state";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import type { Load } from "../shell/use-load";
import { dayAndClock } from "../shell/when";
import { browserInWords } from "./browser-words";

interface LogInsProps {
  readonly load: Load<readonly LogIn[]>;
}

/** Every browser in which the coach is logged in; any of them can be ended. */
export function LogIns({ load }: LogInsProps) {
  const [ending, setEnding] = useState<LogIn | null>(null);
  const ended = () => {
    setEnding(null);
    load.again();
  };
  return (
    <section>
      <h2>Where you are logged in</h2>
      <Loaded load={load} what="log-ins">
        {(list) => <Table list={list} onEnd={setEnding} />}
      </Loaded>
      {ending && (
        <EndForm key={ending.id} whom={ending} onEnded={ended} onLeft={() => setEnding(null)} />
      )}
    </section>
  );
}

interface TableProps {
  readonly list: readonly LogIn[];
  readonly onEnd: (whom: LogIn) => void;
}

function Table({ list, onEnd }: TableProps) {
  const now = useDesk().now();
  return (
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
                <button type="button" class="plain" onClick={() => onEnd(each)}>
                  Log out there<span class="sr-only">: {browserInWords(each.agent)}</span>
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface EndFormProps {
  readonly whom: LogIn;
  readonly onEnded: () => void;
  readonly onLeft: () => void;
}

/** Asks for the password: a browser left open must not be enough. */
function EndForm({ whom, onEnded, onLeft }: EndFormProps) {
  const act = useAct();
  const form = useRef<HTMLFormElement>(null);
  const [password, setPassword] = useState("");
  useEffect(() => form.current?.querySelector("input")?.focus(), []);
  const submit = (event: Event) => {
    event.preventDefault();
    act.run(() => revokeLogIn(whom.id, password), onEnded);
  };
  const now = useDesk().now();
  const faults = act.fault instanceof Refused ? act.fault.faults : [];
  return (
    <>
      <p>
        To log out {browserInWords(whom.agent)}, last used {dayAndClock(whom.last_used_at, now)}:
      </p>
      <form class="fields" ref={form} onSubmit={submit}>
        <TextField
          label="Your password"
          type="password"
          autocomplete="current-password"
          width="w20"
          value={password}
          faults={within(faults, "password")}
          onValue={setPassword}
        />
        <button type="submit" disabled={act.busy || password === ""}>
          Log out
        </button>
        <button type="button" class="plain" onClick={onLeft}>
          Leave it
        </button>
      </form>
      {faults.length === 0 && <Failure fault={act.fault} />}
    </>
  );
}
