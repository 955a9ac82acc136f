import { useState } from "preact/hooks";

import type { SetDone } from "../../offline/entry";
import type { Session } from "../../offline/ledger-view";
import { loadOf, stepLoad } from "../../offline/stacks";
import { later } from "../later";
import { Advice } from "./advice";
import type { AtHand } from "./at-hand";
import { ExerciseHead } from "./exercise-head";
import { LoadCard } from "./load-card";
import { MethodPanel } from "./method-panel";
import { RestBar } from "./rest-bar";
import { Rigging } from "./rigging";
import { hangingBefore, plannedLoad, prefilled } from "./view";

const SkipSet = later("SkipSet");

interface Props {
  readonly here: AtHand;
  readonly earlier: readonly Session[];
}

export function WorkSet({ here, earlier }: Props) {
  const { view, exercise, set, answer } = here;
  const { session } = view;
  const loads = exercise.loads ?? [];
  const planned = plannedLoad(exercise, set, session);
  const [done, setDone] = useState<SetDone>(() => prefilled(here, planned));
  const [skipping, setSkipping] = useState(false);
  const step = { kind: "set", exercise: exercise.key, set: set.key } as const;
  const hanging = hangingBefore(view, exercise, step);
  const plannedKg = planned === null ? null : (loads[planned]?.kg ?? null);
  const preferred = done.load_kg === plannedKg ? planned : null;
  const index = done.load_kg === null ? null : loadOf(loads, done.load_kg, hanging.side, preferred);
  const load = index === null ? null : (loads[index] ?? null);
  const ticking = typeof session.running[here.key]?.since === "number";

  function stepTo(steps: 1 | -1): void {
    const kg = done.load_kg === null ? middle(loads) : stepLoad(loads, done.load_kg, steps);
    if (kg !== null) setDone({ ...done, load_kg: kg });
  }

  if (skipping) return <SkipSet here={here} onBack={() => setSkipping(false)} />;
  return (
    <>
      <main class="set-main" tabIndex={0}>
        <ExerciseHead here={here} />
        <LoadCard
          implement={exercise.implement}
          load={load}
          hanging={answer ? null : hanging}
          onStep={loads.length > 0 ? stepTo : null}
        >
          <Rigging view={view} exercise={exercise} set={set} load={load} />
        </LoadCard>
      </main>
      <section class="set-panel" aria-label="Result">
        {answer || ticking ? null : <RestBar view={view} />}
        <Advice
          here={here}
          earlier={earlier}
          plannedKg={plannedKg}
          chosenKg={done.load_kg}
          onTake={(kg) => setDone({ ...done, load_kg: kg })}
        />
        <MethodPanel here={here} done={done} onChange={setDone} onSkip={() => setSkipping(true)} />
      </section>
    </>
  );
}

function middle(loads: readonly { readonly kg: number }[]): number | null {
  return loads[Math.floor(loads.length / 2)]?.kg ?? null;
}
