import { useState } from "preact/hooks";

import type { PairingCode } from "../answers";
import { makeCode } from "../desk";
import { useDesk } from "../shell/desk-state";
import { inFours } from "../shell/in-fours";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";
import { clock } from "../shell/when";

/** A short code to be typed into the installed app, said over the telephone if need be. */
export function TypedCode({ athlete }: { readonly athlete: string }) {
  const act = useAct();
  const desk = useDesk();
  const [code, setCode] = useState<PairingCode | null>(null);
  return (
    <section>
      <h2>A code to type</h2>
      <p class="aside-note">
        For an app that is already installed: eight characters, good for ten minutes and five tries.
      </p>
      {code && (
        <p role="status">
          <code class="code">{inFours(code.code)}</code> good until {clock(code.expires_at)}
          {Date.parse(code.expires_at) < desk.now() && " (run out)"}
        </p>
      )}
      <Failure fault={act.fault} />
      <button
        type="button"
        disabled={act.busy}
        onClick={() => act.run(() => makeCode(athlete), setCode)}
      >
        {code ? "Make another code" : "Make a code"}
      </button>
    </section>
  );
}
