import type { ExercisePlan, LoadWish, SessionPlan } from "../../api/types";
import type { Lift, Reading } from "../../parts/curve-words";
import { ForceCurve } from "../../parts/force-curve";
import type { Line } from "../block/lines";
import { figure } from "../block/wish-words";
import { outcomesOf, sheetExercise } from "./outcome";
import { useRemarks } from "./writer-state";

/** What stands in the load's place where nothing is hung or picked. */
const WITHOUT_LOAD: Partial<Readonly<Record<LoadWish["basis"], string>>> = {
  body: "own body",
  none: "no load",
};

const KILOS: Reading = { figure: (kg) => figure(Math.round(kg * 10) / 10), unit: "kg" };

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
  const held = heldAt(plan);
  return (
    <ul class="outcomes" aria-label="Becomes">
      {outcomes.map((outcome) => (
        <li key={outcome.sets}>
          {outcomes.length > 1 && <span class="soft">set {outcome.sets} </span>}
          <b class="load">{outcome.load || WITHOUT_LOAD[line.asks.load.basis] || "by feel"}</b>
          {outcome.made && <span class="made"> {outcome.made}</span>}
          <span class="why">{[outcome.off, outcome.why].filter(Boolean).join(" · ")}</span>
          {outcome.curve && (
            <ForceCurve
              curve={outcome.curve}
              lift={{ kind: sheet.implement.kind, ...held }}
              reading={KILOS}
            />
          )}
        </li>
      ))}
    </ul>
  );
}

function heldAt({ method, details }: ExercisePlan): Pick<Lift, "heldAt"> {
  const held = method === "hold" && details && "position" in details;
  return held ? { heldAt: details.position } : {};
}
