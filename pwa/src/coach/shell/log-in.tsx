import { useEffect, useRef, useState } from "preact/hooks";

import { Refused } from "../../api/client";
import { logIn } from "../desk";
import { TextField } from "../fields/text-field";
import { sayGoodbye, useDesk, welcome } from "./desk-state";
import { Page } from "./page";
import { Failure } from "./states";
import { useAct } from "./use-act";

const CODE_NEEDED = "urn:undercroft:problem:code-needed";

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
  const form = useRef<HTMLFormElement>(null);
  const [email, setEmail] = useState(known);
  const [password, setPassword] = useState("");
  const [code, setCode] = useState<string | null>(null);
  const wantsCode = act.fault instanceof Refused && act.fault.problem.type === CODE_NEEDED;
  useEffect(() => {
    if (wantsCode) setCode("");
  }, [wantsCode]);
  const asked = code !== null;
  useEffect(() => {
    if (asked) form.current?.querySelector("input")?.focus();
  }, [asked]);
  const submit = (event: Event) => {
    event.preventDefault();
    act.run(
      () => logIn(email.trim(), password, code ?? undefined),
      (coach) => welcome(desk, coach),
    );
  };
  const anew = () => {
    act.clear();
    setCode(null);
  };
  return (
    <form class="narrow" ref={form} onSubmit={submit}>
      {code === null ? (
        <Known email={email} onEmail={setEmail} password={password} onPassword={setPassword} />
      ) : (
        <CodeWanted email={email} code={code} onCode={setCode} />
      )}
      {!wantsCode && <Failure fault={act.fault} />}
      <button type="submit" class="main" disabled={act.busy}>
        {act.busy ? "Logging in …" : "Log in"}
      </button>
      {asked && (
        <button type="button" class="plain" onClick={anew}>
          Another address or password
        </button>
      )}
    </form>
  );
}

interface KnownProps {
  readonly email: string;
  readonly onEmail: (email: string) => void;
  readonly password: string;
  readonly onPassword: (password: string) => void;
}

function Known({ email, onEmail, password, onPassword }: KnownProps) {
  return (
    <>
      <TextField
        label="Email"
        type="email"
        autocomplete="username"
        value={email}
        onValue={onEmail}
        required
      />
      <TextField
        label="Password"
        type="password"
        autocomplete="current-password"
        value={password}
        onValue={onPassword}
        required
      />
    </>
  );
}

interface CodeWantedProps {
  readonly email: string;
  readonly code: string;
  readonly onCode: (code: string) => void;
}

/** The password was right. */
function CodeWanted({ email, code, onCode }: CodeWantedProps) {
  return (
    <>
      <p class="code-wanted">
        {email.trim()} also needs the six figures that your app shows now. Without your phone, one
        of your recovery codes will do.
      </p>
      <TextField
        label="Code"
        autocomplete="one-time-code"
        longest={40}
        value={code}
        onValue={onCode}
        required
      />
    </>
  );
}
