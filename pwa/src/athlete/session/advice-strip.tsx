import type { Session } from "../../offline/ledger-view";
import { type Advice, advise } from "../../offline/session-walk";
import { useUnits } from "../hooks";
import { lastTold, reasonInWords, riseInWords } from "../words/advice";
import { mass } from "../words/mass";
import type { AtHand } from "./at-hand";

export interface AdviceProps {
  readonly here: AtHand;
  readonly earlier: readonly Session[];
  readonly plannedKg: number | null;
  readonly chosenKg: number | null;
  readonly onTake: (kg: number) => void;
}

/** The suggestion beside the plan, with its reason. The athlete decides. */
export function AdviceStrip({ here, earlier, plannedKg, chosenKg, onTake }: AdviceProps) {
  const units = useUnits();
  const { exercise, view } = here;
  const advice = adviceFor(here, earlier);
  const kg = advice ? exercise.loads?.[advice.suggestion.index]?.kg : undefined;
  if (!advice || kg === undefined || plannedKg === null) return null;
  const last = lastTold(exercise, view.session.record.sets);
  const reason = reasonInWords(advice, last);
  const stands = kg === plannedKg;
  if (stands && !last) return null;
  const taken = !stands && chosenKg === kg;
  return (
    <div class={stands ? "advice advice-quiet" : "advice"}>
      <p>
        <strong>{titleFor(advice, stands, last !== null)}</strong>
        {reason && <span class="advice-reason">{reason}</span>}
      </p>
      {!stands && (
        <button type="button" class="button" onClick={() => onTake(taken ? plannedKg : kg)}>
          {taken ? `Plan: ${mass(plannedKg, units)}` : `Take ${mass(kg, units)}`}
        </button>
      )}
    </div>
  );
}

/**
 * Null where there is no table, or where the walk cannot read it: whatever may be wrong with a sheet, the
 * athlete gets to the set, and the plan stands.
 */
function adviceFor({ exercise, set, view }: AtHand, earlier: readonly Session[]): Advice | null {
  try {
    return advise(exercise, set, earlier, view.session);
  } catch {
    return null;
  }
}

function titleFor(advice: Advice, stands: boolean, told: boolean): string {
  if (stands && advice.suggestion.reason !== "hold") return "The plan stands";
  if (!told) return "After your last sessions";
  return riseInWords(advice);
}
