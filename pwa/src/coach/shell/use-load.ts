/** Reading from the server for as long as a screen is shown. */
import { useEffect, useState } from "preact/hooks";

import { ask, useDesk } from "./desk-state";

export type Loaded<T> =
  | { readonly state: "loading" }
  | { readonly state: "failed"; readonly fault: unknown }
  | { readonly state: "ready"; readonly value: T };

export interface Load<T> {
  readonly now: Loaded<T>;
  readonly again: () => void;
}

/**
 * The answer to `question`, asked anew when `key` changes, after a log-in and by `again`. An answer
 * that came before stays on the screen until the next one is there.
 */
export function useLoad<T>(key: string, question: () => Promise<T>): Load<T> {
  const desk = useDesk();
  const [now, setNow] = useState<Loaded<T> & { readonly key?: string }>({ state: "loading" });
  const [round, setRound] = useState(0);
  const logIns = desk.logIns.value;
  useEffect(() => {
    let wanted = true;
    ask(desk, question).then(
      (value) => wanted && setNow({ state: "ready", value, key }),
      (fault: unknown) => wanted && setNow({ state: "failed", fault, key }),
    );
    return () => {
      wanted = false;
    };
  }, [desk, key, round, logIns]);
  const current: Loaded<T> = now.key === key ? now : { state: "loading" };
  return { now: current, again: () => setRound((before) => before + 1) };
}
