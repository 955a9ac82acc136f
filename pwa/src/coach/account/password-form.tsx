import { useState } from "preact/hooks";

import { Refused } from "../../api/client";
import { within } from "../block/faults";
import { changePassword } from "../desk";
import { TextField } from "../fields/text-field";
import { Failure, Said } from "../shell/states";
import { useAct } from "../shell/use-act";

const NOTHING = { old: "", fresh: "", code: "" };

interface PasswordFormProps {
  /** A second factor is on. */
  readonly asksCode: boolean;
  readonly onChanged: () => void;
}

/** Another password; it ends every other log-in. */
export function PasswordForm({ asksCode, onChanged }: PasswordFormProps) {
  const act = useAct();
  const [typed, setTyped] = useState(NOTHING);
  const [done, setDone] = useState(false);
  const submit = (event: Event) => {
    event.preventDefault();
    setDone(false);
    act.run(
      () => changePassword(typed.old, typed.fresh, typed.code || undefined),
      () => {
        onChanged();
        setTyped(NOTHING);
        setDone(true);
      },
    );
  };
  const faults = act.fault instanceof Refused ? act.fault.faults : [];
  return (
    <section>
      <h2>Password</h2>
      <p class="aside-note">At least twelve characters; a few words that nobody else would join.</p>
      <form class="fields" onSubmit={submit}>
        <TextField
          label="The one you have"
          type="password"
          autocomplete="current-password"
          width="w20"
          value={typed.old}
          faults={within(faults, "old")}
          onValue={(old) => setTyped({ ...typed, old })}
        />
        <TextField
          label="The new one"
          type="password"
          autocomplete="new-password"
          width="w20"
          value={typed.fresh}
          faults={within(faults, "new")}
          onValue={(fresh) => setTyped({ ...typed, fresh })}
        />
        {asksCode && (
          <TextField
            label="Code of the app"
            autocomplete="one-time-code"
            width="w8"
            longest={40}
            value={typed.code}
            faults={within(faults, "code")}
            onValue={(code) => setTyped({ ...typed, code })}
          />
        )}
        <button type="submit" disabled={act.busy || typed.old === "" || typed.fresh === ""}>
          Change the password
        </button>
      </form>
      {faults.length === 0 && <Failure fault={act.fault} />}
      {done && <Said>Changed. You are logged out everywhere else.</Said>}
    </section>
  );
}
