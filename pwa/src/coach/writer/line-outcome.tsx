import type { ExercisePlan, LoadWish, SessionPlan } from "../../api/types";
import type { Line } from "../block/lines";
import { outcomesOf, sheetExercise } from "./outcome";
import { useRemarks } from "./writer-state";

/** What stands in the load's place where nothing is hung or picked. */
const WITHOUT_LOAD: Partial<Readonly<Record<LoadWish["basis"], string>>> = {
  body: "own body",
  none: "no load",
};

interface LineOutcomeProps {
  readonly plan: ExercisePlan;
  readonly session: SessionPlan;
  readonly line: Line;
}

/** What the line becomes on the chosen athlete's kit. */
export function LineOutcome({ plan, session, line }: LineOutcomeProps) {
  const sheet = sheetExercise(useRemarks().sheets, session.key, plan.key);
  if (!sheet) return null;
  const outcomes = outcomesOf(
    sheet,
    line.sets.map((set) => set.key),
  );
  return (
    <ul class="outcomes" aria-label="Becomes">
      {outcomes.map((outcome) => (
        <li key={outcome.sets}>
          {outcomes.length > 1 && <span class="soft">set {outcome.sets} </span>}
          <b class="load">{outcome.load || WITHOUT_LOAD[line.asks.load.basis] || "by feel"}</b>
          {outcome.made && <span class="made"> {outcome.made}</span>}
          <span class="why">
            {[outcome.off, outcome.curve, outcome.why].filter(Boolean).join(" · ")}
          </span>
        </li>
      ))}
    </ul>
  );
}
