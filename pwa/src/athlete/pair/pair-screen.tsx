import { useState } from "preact/hooks";

import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { Disclaimer } from "../stop/stop-screen";
import { CodeForm } from "./code-form";
import { InvitationPart } from "./invitation-part";
import type { Found } from "./pairing";
import { useLinkInvitation } from "./pairing";

/** Tying the phone to an athlete. Nothing happens before a tap that shows who invites whom. */
export function PairScreen() {
  const { router } = useApp();
  const { identity } = usePhoneState();
  const link = useLinkInvitation();
  const [typed, setTyped] = useState<Found | null>(null);
  const found = typed ?? link.found;
  return (
    <div class="screen pair-screen">
      <main class="page">
        <Mark />
        <h1>Undercroft</h1>
        {found ? (
          <InvitationPart found={found} />
        ) : (
          <>
            <p class="lead">
              Your coach's program, worked out for your own kit, also without signal.
            </p>
            {link.asking && <p role="status">Looking at your invitation</p>}
            {link.trouble && (
              <p class="notice" role="alert">
                {link.trouble}
              </p>
            )}
            <CodeForm onFound={setTyped} />
            <p class="small">Your coach gives you a code, or a link that you open on this phone.</p>
          </>
        )}
        {identity && (
          <button type="button" class="button quiet" onClick={() => router.replace("/")}>
            Stay paired as {identity.athlete.name}
          </button>
        )}
        <Disclaimer />
      </main>
    </div>
  );
}

/** The vault of the cellar with a bar in it. */
function Mark() {
  return (
    <svg class="mark" viewBox="0 0 120 84" aria-hidden="true">
      <path d="M14 78V52a46 46 0 0 1 92 0v26" />
      <path class="mark-thin" d="M26 78V53a34 34 0 0 1 68 0v25M60 7v12M27 20l8 9M93 20l-8 9" />
      <path d="M6 78h108" />
      <path class="mark-bar" d="M38 58h44M44 46v24M76 46v24" />
    </svg>
  );
}
