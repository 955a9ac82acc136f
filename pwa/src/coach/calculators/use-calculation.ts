/** The result for what was given, asked for a moment after the last change, once nothing lacks. */
import { useEffect, useState } from "preact/hooks";

import type { Calculation, Calculator } from "../answers";
import { calculate } from "../desk";
import { ask, useDesk } from "../shell/desk-state";
import { lacking, toSend, type Given } from "./inputs";

const PAUSE_MS = 250;

export interface Worked {
  readonly result: Calculation | null;
  readonly fault: unknown;
  /** The result is of what was given before. */
  readonly stale: boolean;
}

interface Answered extends Omit<Worked, "stale"> {
  readonly to: Given | null;
}

const NOTHING: Answered = { to: null, result: null, fault: null };

export function useCalculation({ key, inputs }: Calculator, given: Given): Worked {
  const desk = useDesk();
  const [answered, setAnswered] = useState(NOTHING);
  const logIns = desk.logIns.value;
  const answers = desk.answers.value;
  const whole = lacking(inputs, given).length === 0;
  useEffect(() => {
    if (!whole) return setAnswered(NOTHING);
    const stop = new AbortController();
    const work = async () => {
      try {
        const asked = () => calculate(key, toSend(inputs, given), { signal: stop.signal });
        const result = await ask(desk, asked);
        setAnswered({ to: given, result, fault: null });
      } catch (fault) {
        if (!stop.signal.aborted) setAnswered({ to: given, result: null, fault });
      }
    };
    const timer = setTimeout(() => void work(), PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [given, whole, logIns, answers]);
  return { result: answered.result, fault: answered.fault, stale: answered.to !== given };
}
