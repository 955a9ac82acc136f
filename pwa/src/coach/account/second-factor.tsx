import { useState } from "preact/hooks";

import { Refused } from "../../api/client";
import type { FactorBegun, SecondFactor } from "../answers";
import { within } from "../block/faults";
import { CopyButton } from "../athlete/copy-button";
import { beginFactor, turnFactorOff, turnFactorOn } from "../desk";
import { TextField } from "../fields/text-field";
import { counted } from "../shell/counted";
import { inFours } from "../shell/in-fours";
import { Failure } from "../shell/states";
import { useAct, type Act } from "../shell/use-act";
import { date } from "../shell/when";

interface SecondFactorProps {
  readonly seen: SecondFactor;
  /** Asks the server for what stands now. */
  readonly onChanged: () => void;
}

/** Whether a log-in asks for a code of an app as well: turned on, kept, turned off. */
export function SecondFactorPart({ seen, onChanged }: SecondFactorProps) {
  const [codes, setCodes] = useState<readonly string[] | null>(null);
  return (
    <section>
      <h2>A code at log-in</h2>
      {codes && <RecoveryCodes codes={codes} onKept={() => setCodes(null)} />}
      {seen.on_since === null ? (
        <Off
          onTurnedOn={(made) => {
            setCodes(made);
            onChanged();
          }}
        />
      ) : (
        codes === null && <On seen={seen} onChanged={onChanged} />
      )}
    </section>
  );
}

function Off({ onTurnedOn }: { readonly onTurnedOn: (codes: readonly string[]) => void }) {
  const act = useAct();
  const [begun, setBegun] = useState<FactorBegun | null>(null);
  return (
    <>
      <p class="aside-note">
        Your password alone opens the desk. With an app on your phone that makes one-time codes, a
        log-in also asks for the six figures that the app shows: whoever learns your password is not
        in yet.
      </p>
      {begun ? (
        <Begun begun={begun} onTurnedOn={onTurnedOn} onLeft={() => setBegun(null)} />
      ) : (
        <button type="button" disabled={act.busy} onClick={() => act.run(beginFactor, setBegun)}>
          Ask for a code
        </button>
      )}
      <Failure fault={act.fault} />
    </>
  );
}

interface BegunProps {
  readonly begun: FactorBegun;
  readonly onTurnedOn: (codes: readonly string[]) => void;
  readonly onLeft: () => void;
}

function Begun({ begun, onTurnedOn, onLeft }: BegunProps) {
  // As a picture, not as markup: nothing that came over the wire is put into the page.
  const picture = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(begun.qr)}`;
  return (
    <>
      <h3>First the app</h3>
      <div class="invitation">
        <img
          class="qr"
          src={picture}
          alt="The secret as a QR code for the app"
          width={200}
          height={200}
        />
        <div>
          <p>Let the app read this, or type the secret into it:</p>
          <p>
            <code class="secret">{inFours(begun.secret)}</code>
          </p>
          <CopyButton text={begun.secret} what="secret" />
          <p>Shown only now. Whoever has it makes the same codes.</p>
        </div>
      </div>
      <h3>Then show that it works</h3>
      <ProofForm
        words="Ask for a code from now on"
        code="Code that the app shows now"
        prove={turnFactorOn}
        onProved={({ codes }) => onTurnedOn(codes)}
      >
        <button type="button" class="plain" onClick={onLeft}>
          Leave it as it was
        </button>
      </ProofForm>
    </>
  );
}

function On({ seen, onChanged }: SecondFactorProps) {
  const left = seen.recovery_codes_left;
  return (
    <>
      <p>
        Asked for since {date(seen.on_since ?? "")}.{" "}
        {left === 0 ? "No recovery code is left." : `${counted(left, "recovery code")} left.`}
      </p>
      <p class="aside-note">
        For new recovery codes, or another phone, let the password be enough and ask for a code
        anew.
      </p>
      <ProofForm
        words="Let the password be enough"
        code="Code of the app, or a recovery code"
        prove={turnFactorOff}
        onProved={onChanged}
      />
    </>
  );
}

interface RecoveryCodesProps {
  readonly codes: readonly string[];
  readonly onKept: () => void;
}

function RecoveryCodes({ codes, onKept }: RecoveryCodesProps) {
  return (
    <div role="status">
      <p>
        A log-in asks for a code from now on; you are logged out everywhere else. Keep these
        recovery codes where your phone is not: each of them opens the desk once in place of a code.
        Shown only now.
      </p>
      <ol class="recovery">
        {codes.map((code) => (
          <li key={code}>
            <code>{inFours(code)}</code>
          </li>
        ))}
      </ol>
      <p class="bar">
        <CopyButton text={codes.map(inFours).join("\n")} what="codes" />
      </p>
      <button type="button" class="main" onClick={onKept}>
        I have put them away
      </button>
    </div>
  );
}

interface ProofFormProps<T> {
  readonly words: string;
  readonly code: string;
  readonly prove: (password: string, code: string) => Promise<T>;
  readonly onProved: (answer: T) => void;
  readonly children?: preact.ComponentChildren;
}

const NOTHING = { password: "", code: "" };

/** The present password and a code, without which nothing changes. */
function ProofForm<T>({ words, code, prove, onProved, children }: ProofFormProps<T>) {
  const act = useAct();
  const [typed, setTyped] = useState(NOTHING);
  const submit = (event: Event) => {
    event.preventDefault();
    act.run(() => prove(typed.password, typed.code), onProved);
  };
  const faults = faultsOf(act);
  return (
    <>
      <form class="narrow" onSubmit={submit}>
        <TextField
          label="Your password"
          type="password"
          autocomplete="current-password"
          value={typed.password}
          faults={within(faults, "password")}
          onValue={(password) => setTyped({ ...typed, password })}
        />
        <TextField
          label={code}
          autocomplete="one-time-code"
          longest={40}
          value={typed.code}
          faults={within(faults, "code")}
          onValue={(value) => setTyped({ ...typed, code: value })}
        />
        <div class="bar">
          <button type="submit" disabled={act.busy || typed.password === "" || typed.code === ""}>
            {words}
          </button>
          {children}
        </div>
      </form>
      {faults.length === 0 && <Failure fault={act.fault} />}
    </>
  );
}

function faultsOf(act: Act) {
  return act.fault instanceof Refused ? act.fault.faults : [];
}
