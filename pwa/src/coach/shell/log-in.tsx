import { useEffect, useRef, useState } from "preact/hooks";

import { logIn } from "../desk";
import { TextField } from "../fields/text-field";
import { sayGoodbye, useDesk, welcome } from "./desk-state";
import { Page } from "./page";
import { Failure } from "./states";
import { useAct } from "./use-act";

export function LogInPage() {
  return (
    <Page title="The desk" above={<span class="mark">Undercroft</span>}>
      <p class="lead">Where a coach writes blocks, sends them, and reads what was done.</p>
      <LogInForm />
    </Page>
  );
}

/** Over the page when a session has ended, so that nothing typed beneath is lost. */
export function LogInAgain() {
  const dialog = useRef<HTMLDialogElement>(null);
  const desk = useDesk();
  useEffect(() => {
    if (!dialog.current?.open) dialog.current?.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      aria-labelledby="log-in-again"
      onCancel={(event) => event.preventDefault()}
    >
      <h2 id="log-in-again">Log in again</h2>
      <p>Your log-in has ended. What you have typed is still here, beneath.</p>
      <LogInForm email={desk.coach.value?.email ?? ""} />
      <button type="button" class="plain" onClick={() => sayGoodbye(desk)}>
        Leave the desk
      </button>
    </dialog>
  );
}

function LogInForm({ email: known = "" }: { readonly email?: string }) {
  const desk = useDesk();
  const act = useAct();
  const [email, setEmail] = useState(known);
  const [password, setPassword] = useState("");
  const submit = (event: Event) => {
    event.preventDefault();
    act.run(
      () => logIn(email.trim(), password),
      (coach) => welcome(desk, coach),
    );
  };
  return (
    <form class="narrow" onSubmit={submit}>
      <TextField
        label="Email"
        type="email"
        autocomplete="username"
        value={email}
        onValue={setEmail}
        required
      />
      <TextField
        label="Password"
        type="password"
        autocomplete="current-password"
        value={password}
        onValue={setPassword}
        required
      />
      <Failure fault={act.fault} />
      <button type="submit" class="main" disabled={act.busy}>
        {act.busy ? "Logging in …" : "Log in"}
      </button>
    </form>
  );
}
