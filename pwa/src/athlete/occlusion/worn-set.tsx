import { useTop } from "../device/top";
import { useState } from "preact/hooks";

import type { SheetSet } from "../../api/types";
import type { Side } from "../../offline/entry";
import { limbOf } from "../../offline/occlusion/bouts";
import { stepLoad } from "../../offline/stacks";
import { atHand } from "../session/at-hand";
import { stepField, fieldsFor } from "../session/fields";
import { LoadCard } from "../session/load-card";
import { PanelFoot } from "../session/panel-foot";
import { RestBar } from "../session/rest-bar";
import { DoneButton } from "../session/result-panel";
import { SkipSet } from "../session/skip-set";
import { hangingBefore } from "../session/view";
import { BigCount } from "./big-count";
import { toldAfter } from "./felt";
import type { OcclusionKnown } from "./known";
import type { BoutProps } from "./occlusion-set";
import { choiceOf, filledIn } from "./result";
import { TwoLines } from "./two-lines";
import { capital, limbInWords, usualInWords } from "./words";
import { targetInWords } from "../words/sets";

interface Props extends BoutProps {
  readonly set: SheetSet;
  readonly side: Side | null;
  readonly known: OcclusionKnown;
}

/** One set with the wrap on: count, record, rest with it on. */
export function WornSet({ view, exercise, set, side, known }: Props) {
  useTop();
  const here = atHand(view, exercise, set, side);
  const [done, setDone] = useState(() => filledIn(here, side));
  const [skipping, setSkipping] = useState(false);
  const { load, loads } = choiceOf(here, done);
  const step = { kind: "set", exercise: exercise.key, set: set.key } as const;
  const usual = usualInWords(exercise, set);
  const before = exercise.sets[exercise.sets.indexOf(set) - 1];
  const felt = before ? toldAfter(view.session, before.key, side) : null;
  if (skipping) return <SkipSet here={here} onBack={() => setSkipping(false)} />;
  return (
    <>
      <main class="set-main wrap-main worn-main" tabIndex={0}>
        <div class="exercise-head">
          <h2>{exercise.name}</h2>
          <p class="step-count">
            Set {exercise.sets.indexOf(set) + 1} of {exercise.sets.length}
          </p>
          <p class="target worn-target">{targetInWords(set.target)}</p>
          <p class="cue">
            {capital(limbInWords(limbOf(exercise, side)))}
            {usual && `. ${usual}`}
          </p>
        </div>
        <LoadCard
          implement={exercise.implement}
          load={load}
          hanging={hangingBefore(view, exercise, step)}
          onStep={
            loads.length > 1
              ? (steps) => {
                  const kg = done.load_kg === null ? null : stepLoad(loads, done.load_kg, steps);
                  if (kg !== null) setDone({ ...done, load_kg: kg });
                }
              : null
          }
        />
        <TwoLines lines={known.questions.two_lines} />
      </main>
      <section class="set-panel" aria-label="Result">
        <RestBar view={view} />
        <BigCount
          value={done.reps}
          onStep={(by) => {
            const [reps] = fieldsFor(exercise, set);
            if (reps) setDone({ ...done, reps: stepField(reps, done.reps, by) });
          }}
        />
        <DoneButton
          here={here}
          done={felt === null ? done : { ...done, tightness: felt }}
          onChange={setDone}
          onSkip={() => setSkipping(true)}
        />
        <PanelFoot here={here} onSkip={() => setSkipping(true)} />
      </section>
    </>
  );
}
