import { useTop } from "../device/top";
import { useState } from "preact/hooks";

import { type SetDone, type Side, SIDES } from "../../offline/entry";
import { revisionOf } from "../../offline/ledger-view";
import { limbOf, openSets } from "../../offline/occlusion/bouts";
import { stepLoad } from "../../offline/stacks";
import { Stepper } from "../../parts/stepper";
import { useApp } from "../app-context";
import { useArmed } from "../device/armed";
import { atHand } from "../session/at-hand";
import { Cautions } from "../session/exercise-head";
import { LoadCard } from "../session/load-card";
import { hangingBefore } from "../session/view";
import { type OcclusionKnown, useTell } from "./known";
import type { BoutProps } from "./occlusion-set";
import { choiceOf, filledIn } from "./result";
import { aimOf, Doses, Setting } from "./setting";
import { capital, limbInWords, pieceIn, ruleOf } from "./words";

interface Props extends BoutProps {
  /** Limbs with open sets, the one that goes on first. */
  readonly sides: readonly (Side | null)[];
  readonly known: OcclusionKnown;
  readonly looser: boolean;
}

/** Load ready, wrap where and how tight; one tap starts the wear clock. */
export function WrapOn({ view, exercise, sides, known, looser }: Props) {
  const { phone, alarm } = useApp();
  const tell = useTell();
  useTop();
  const armed = useArmed();
  const [side, setSide] = useState<Side | null>(sides[0] ?? null);
  const [set] = openSets(exercise, view.session.record.sets, side);
  const aim = aimOf(exercise, looser);
  const [felt, setFelt] = useState(aim);
  const [chosen, setChosen] = useState<number | null>(null);
  if (!set) return null;
  const here = atHand(view, exercise, set, side);
  const done: SetDone = {
    ...filledIn(here, side),
    ...(chosen !== null && { load_kg: chosen }),
    ...(felt !== null && { tightness: felt }),
  };
  const { load, loads } = choiceOf(here, done);
  const step = { kind: "set", exercise: exercise.key, set: set.key } as const;
  const most = exercise.occlusion?.most_tightness ?? 10;
  const tooTight = felt !== null && felt > most;
  const cuffless = ruleOf(exercise)?.restriction === "cuff" && !exercise.occlusion?.pressure_mmhg;

  function putOn(): void {
    if (!set) return;
    alarm.ready();
    const { sheet } = view.session;
    const running = { since: null, parts: [], done };
    void phone.saveRunning(sheet.session, here.key, running);
    const place = { revision: revisionOf(sheet), session: sheet.session, set: set.key };
    void tell("wrap.on", { limb: limbOf(exercise, side) }, place);
  }

  return (
    <>
      <main class="set-main wrap-main" tabIndex={0}>
        <div class="exercise-head">
          <h2>{exercise.name}</h2>
          <p class="target">{capital(limbInWords(limbOf(exercise, side)))}</p>
          {view.answered.every((one) => one.exercise.key !== exercise.key) && (
            <Cautions exercise={exercise} />
          )}
        </div>
        {sides.length > 1 && (
          <FirstLimb sides={sides} side={side} onChange={setSide} view={view} exercise={exercise} />
        )}
        <LoadCard
          implement={exercise.implement}
          load={load}
          hanging={hangingBefore(view, exercise, step)}
          onStep={
            loads.length > 1
              ? (steps) => {
                  const kg = done.load_kg === null ? null : stepLoad(loads, done.load_kg, steps);
                  if (kg !== null) setChosen(kg);
                }
              : null
          }
        />
        <div class="wrap-facts">
          <Setting exercise={exercise} known={known} looser={looser} />
          <Doses exercise={exercise} />
        </div>
        <How known={known} exercise={exercise} />
      </main>
      <section class="set-panel" aria-label="Wrap on">
        {felt !== null && (
          <Stepper
            label="How tight it feels"
            value={String(felt)}
            atLeast={felt === 0}
            atMost={felt === 10}
            onStep={(by) => setFelt(felt + by)}
          />
        )}
        <button
          type="button"
          class="button main record"
          disabled={!armed || tooTight || cuffless}
          onClick={putOn}
        >
          {label(tooTight, cuffless, most)}
        </button>
      </section>
    </>
  );
}

function label(tooTight: boolean, cuffless: boolean, most: number): string {
  if (cuffless) return "Not without a pressure";
  return tooTight ? `Loosen it first: at most ${most}` : "It is on";
}

interface FirstProps extends BoutProps {
  readonly sides: readonly (Side | null)[];
  readonly side: Side | null;
  readonly onChange: (side: Side | null) => void;
}

/** Which limb goes first, as long as neither was begun. */
function FirstLimb({ view, exercise, sides, side, onChange }: FirstProps) {
  const begun = exercise.sets.some(({ key }) => view.session.record.sets.has(key));
  if (begun) return null;
  return (
    <div class="row first-limb" role="group" aria-label="Which limb first">
      {SIDES.filter((each) => sides.includes(each)).map((each) => (
        <button
          key={each}
          type="button"
          class="button"
          aria-pressed={each === side}
          onClick={() => onChange(each)}
        >
          {capital(each)} first
        </button>
      ))}
    </div>
  );
}

function How({ known, exercise }: Pick<Props, "known" | "exercise">) {
  return (
    <details class="how" open>
      <summary>Where and how the {pieceIn(exercise, false)} goes on</summary>
      <ul>
        {known.questions.how.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
