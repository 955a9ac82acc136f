import type { Stages } from "../answers";
import { dayAndClock } from "../shell/when";
import { lastStage, stagesOf } from "./standing";

const STEP = 9;
const TALL = 16;

/** Six strokes, as on a tally: full for what was reached, a dot for what was not. */
export function StageMarks({ states, now }: { readonly states: Stages; readonly now: number }) {
  const stages = stagesOf(states);
  return (
    <span class="stage-marks">
      <svg
        viewBox={`0 0 ${STEP * stages.length} ${TALL}`}
        width={STEP * stages.length}
        height={TALL}
        aria-hidden="true"
      >
        {stages.map((stage, place) => {
          const x = STEP * place + STEP / 2;
          return stage.reached ? (
            <line key={stage.name} class="stroke" x1={x + 1} y1={2} x2={x - 1} y2={TALL - 2} />
          ) : (
            <circle key={stage.name} class="dot" cx={x} cy={TALL - 4} r={1.5} />
          );
        })}
      </svg>
      <span>{lastStage(states, now)}</span>
    </span>
  );
}

/** All six with their moments, where there is room for them. */
export function StageList({ states, now }: { readonly states: Stages; readonly now: number }) {
  return (
    <ol class="stage-list" aria-label="How far it has come">
      {stagesOf(states).map((stage) => (
        <li key={stage.name} class={stage.reached ? "reached" : "ahead"}>
          {stage.name}
          <small>
            {stage.at === null
              ? stage.reached
                ? "passed"
                : "not yet"
              : dayAndClock(stage.at, now)}
          </small>
        </li>
      ))}
    </ol>
  );
}
