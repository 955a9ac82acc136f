/** Asking the server about an invitation, and taking it. */
import { useEffect, useState } from "preact/hooks";

import { get, NoAnswer, post, Refused } from "../../api/client";
import type { Invitation, Way } from "../../api/sync";
import { look } from "../../offline/pairing";
import { useApp } from "../app-context";

export const ask = { get, post };

export interface Found {
  readonly way: Way;
  readonly invitation: Invitation;
}

interface LinkInvitation {
  readonly asking: boolean;
  readonly found: Found | null;
  readonly trouble: string | null;
}

/** The invitation of the link that was opened, if one was. */
export function useLinkInvitation(): LinkInvitation {
  const { secret: link } = useApp();
  const [state, setState] = useState<LinkInvitation>({ asking: false, found: null, trouble: null });
  useEffect(() => {
    const secret = link.peek();
    if (secret === null) return;
    link.value = null;
    const way = { secret };
    setState({ asking: true, found: null, trouble: null });
    look(ask, way).then(
      (invitation) => setState({ asking: false, found: { way, invitation }, trouble: null }),
      (fault: unknown) => setState({ asking: false, found: null, trouble: pairingTrouble(fault) }),
    );
  }, [link]);
  return state;
}

export function pairingTrouble(fault: unknown): string {
  if (fault instanceof NoAnswer) {
    return "The server did not answer. Pairing needs a network, only this once. Nothing is used up.";
  }
  if (!(fault instanceof Refused)) throw fault;
  if (fault.status === 429) {
    return `Tried too often. Wait ${fault.retryAfterS ?? 60} seconds and try again.`;
  }
  return "This invitation or code cannot be used: it is wrong, used up or too old. Ask your coach for a new one.";
}
