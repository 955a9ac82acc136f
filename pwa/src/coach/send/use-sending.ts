/** A block on its way to the chosen athletes, and what has come of it so far. */
import { useState } from "preact/hooks";

import type { SendAnswer } from "../answers";
import { send } from "../desk";
import { useAct, type Act } from "../shell/use-act";
import { NOBODY_YET, oneByOne, unanswered } from "./one-by-one";
import type { Overruled } from "./send-result";
import { merged } from "./stops";

export interface Sending {
  readonly act: Act;
  /** What came of all; null while there is somebody to choose or to wait for. */
  readonly answer: SendAnswer | null;
  readonly soFar: SendAnswer;
  readonly waiting: readonly string[];
  readonly start: () => void;
  readonly overrule: (all: readonly Overruled[]) => void;
  /** To choose again. */
  readonly again: () => void;
}

/** `id` is the block's, `startsOn` the Monday that it begins with, "" for none in particular. */
export function useSending(id: string, startsOn: string, chosen: ReadonlySet<string>): Sending {
  const act = useAct();
  const [answer, setAnswer] = useState<SendAnswer | null>(null);
  const [soFar, setSoFar] = useState<SendAnswer>(NOBODY_YET);
  const waiting = unanswered(chosen, soFar);
  const start = () =>
    act.run(
      () => oneByOne(waiting, (one) => send(id, [one], startsOn), setSoFar, soFar),
      (all) => {
        setAnswer(all);
        setSoFar(NOBODY_YET);
      },
    );
  // One by one: a reason counts for the athlete for whom it was written, and for nobody else.
  const overrule = (all: readonly Overruled[]) =>
    act.run(
      async () => {
        for (const { athlete, overrules } of all) {
          const next = await send(id, [athlete], startsOn, overrules);
          setAnswer((before) => (before ? merged(before, next) : next));
        }
      },
      () => {},
    );
  return { act, answer, soFar, waiting, start, overrule, again: () => setAnswer(null) };
}
