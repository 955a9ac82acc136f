import type { SheetExercise } from "../../api/types";
import type { SetRecord } from "../../offline/fold";
import type { Advice } from "../../offline/session-walk";
import { useUnits } from "../hooks";
import { lastTold, reasonInWords, riseInWords } from "../words/advice";
import { mass } from "../words/mass";

interface Props {
  readonly advice: Advice | null;
  readonly exercise: SheetExercise;
  readonly records: ReadonlyMap<string, SetRecord>;
  readonly plannedKg: number | null;
  readonly chosenKg: number | null;
  readonly onTake: (kg: number) => void;
}

/** The suggestion beside the plan, with its reason. The athlete decides. */
export function AdviceStrip({ advice, exercise, records, plannedKg, chosenKg, onTake }: Props) {
  const units = useUnits();
  const kg = advice ? exercise.loads?.[advice.suggestion.index]?.kg : undefined;
  if (!advice || kg === undefined || plannedKg === null) return null;
  const last = lastTold(exercise, records);
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

function titleFor(advice: Advice, stands: boolean, told: boolean): string {
  if (stands && advice.suggestion.reason !== "hold") return "The plan stands";
  if (!told) return "After your last sessions";
  return riseInWords(advice);
}
