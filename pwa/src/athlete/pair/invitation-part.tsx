import { useState } from "preact/hooks";

import { toMs } from "../../api/sync";
import { accept, deviceName, makeCode } from "../../offline/pairing";
import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { unsentInWords, unsentOf } from "../sync/sync-words";
import { clockTime } from "../words/times";
import { ask, type Found, pairingTrouble } from "./pairing";

/** Who invites whom, and the tap that agrees. */
export function InvitationPart({ found }: { readonly found: Found }) {
  const { phone, router } = useApp();
  const state = usePhoneState();
  const [working, setWorking] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const { coach, athlete } = found.invitation;

  async function agree(): Promise<void> {
    setWorking(true);
    setTrouble(null);
    try {
      const before = state.identity?.device ?? null;
      const name = deviceName(navigator.userAgent);
      await phone.takePairing(await accept(ask, found.way, name, before));
      router.replace("/");
    } catch (fault) {
      setTrouble(pairingTrouble(fault));
      setWorking(false);
    }
  }

  return (
    <>
      <p class="lead">
        <strong>{coach}</strong> invites <strong>{athlete}</strong> to train with this phone.
      </p>
      <OtherAthlete athlete={athlete} />
      {trouble && (
        <p class="notice" role="alert">
          {trouble}
        </p>
      )}
      <button type="button" class="button main" disabled={working} onClick={() => void agree()}>
        {working ? "Pairing" : `Yes, I am ${athlete}`}
      </button>
      {"secret" in found.way && <CodePart secret={found.way.secret} />}
    </>
  );
}

/** Another athlete's unsent entries are never sent in this one's name. */
function OtherAthlete({ athlete }: { readonly athlete: string }) {
  const state = usePhoneState();
  const { identity } = state;
  if (!identity || identity.athlete.name === athlete) return null;
  const unsent = unsentOf(state);
  return (
    <p class="notice">
      This phone is {identity.athlete.name}'s now.{" "}
      {unsent.length > 0
        ? `${unsentInWords(unsent)} of theirs are not sent yet. They stay here, and are sent when ${identity.athlete.name} pairs this phone again.`
        : "All of theirs is on the server."}
    </p>
  );
}

/** An installed app on some phones does not share the browser's memory: it needs a code to be typed. */
function CodePart({ secret }: { readonly secret: string }) {
  const [code, setCode] = useState<{ readonly text: string; readonly until: number } | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);

  async function make(): Promise<void> {
    setTrouble(null);
    try {
      const made = await makeCode(ask, secret);
      setCode({ text: made.code, until: toMs(made.expires_at) });
    } catch (fault) {
      setTrouble(pairingTrouble(fault));
    }
  }

  if (code) {
    return (
      <section class="card" aria-label="Code for the installed app">
        <p class="code-shown">
          {code.text.slice(0, 4)} {code.text.slice(4)}
        </p>
        <p>Type it into the app on your home screen, before {clockTime(code.until)}.</p>
      </section>
    );
  }
  return (
    <section class="stack" aria-label="For the installed app">
      <p class="small">
        On an iPhone, put this page on the home screen first and pair the app there, with a code.
      </p>
      {trouble && <p class="notice">{trouble}</p>}
      <button type="button" class="button" onClick={() => void make()}>
        Make a code for the installed app
      </button>
    </section>
  );
}
