/** Changing something on the server: busy while it runs, and its fault afterwards. */
import { useState } from "preact/hooks";

import { ask, useDesk } from "./desk-state";

export interface Act {
  readonly busy: boolean;
  readonly fault: unknown;
  /** Does it, and then what comes after; faults are kept in `fault`. */
  readonly run: <T>(deed: () => Promise<T>, then: (answer: T) => void) => void;
  readonly clear: () => void;
}

export function useAct(): Act {
  const desk = useDesk();
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<unknown>(null);
  const run = <T>(deed: () => Promise<T>, then: (answer: T) => void) => {
    if (busy) return;
    setBusy(true);
    setFault(null);
    ask(desk, deed)
      .then(then, setFault)
      .finally(() => setBusy(false));
  };
  return { busy, fault, run, clear: () => setFault(null) };
}
