import type { SheetExercise } from "../../api/types";
import type { Step } from "../../offline/plan";
import { useApp } from "../app-context";
import { useArmed } from "../device/armed";
import { count } from "../words/sets";
import { Cautions } from "./exercise-head";
import { LoadCard } from "./load-card";
import { Looks } from "./looks";
import { RestBar } from "./rest-bar";
import { Rigging } from "./rigging";
import { SwapButton } from "./swap-button";
import { hangingBefore, type SessionView } from "./view";

interface Props {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
  readonly step: Step & { readonly kind: "ramp" };
}

/** One warm-up set on the way to the first work set. Nothing of it goes into the ledger. */
export function RampStep({ view, exercise, step }: Props) {
  const { phone, router } = useApp();
  const armed = useArmed();
  const ramp = exercise.ramp ?? [];
  const here = ramp[step.ramp];
  if (!here) return null;
  const load = exercise.loads?.[here.load] ?? null;
  const to = (done: number) => void phone.saveRamp(view.session.sheet.session, exercise.key, done);
  return (
    <>
      <main class="set-main" tabIndex={0}>
        <div class="exercise-head">
          <h2>{exercise.name}</h2>
          <p class="step-count">
            Warm-up {step.ramp + 1} of {ramp.length}
          </p>
          <p class="target">{count(here.reps, "rep")}, easy and fast</p>
          <Looks exercise={exercise} />
          {step.ramp === 0 && <Cautions exercise={exercise} />}
        </div>
        <LoadCard
          implement={exercise.implement}
          load={load}
          hanging={hangingBefore(view, exercise, step)}
          onStep={null}
        >
          <Rigging view={view} exercise={exercise} load={load} />
        </LoadCard>
      </main>
      <section class="set-panel" aria-label="Result">
        <RestBar view={view} />
        <button
          type="button"
          class="button main record"
          disabled={!armed}
          onClick={() => to(step.ramp + 1)}
        >
          Warm-up done
        </button>
        <div class="panel-foot">
          <button type="button" class="button quiet" onClick={() => to(ramp.length)}>
            Skip warm-up
          </button>
          {step.ramp === 0 && <SwapButton exercise={exercise} />}
          {step.ramp > 0 ? (
            <button type="button" class="button quiet" onClick={() => to(step.ramp - 1)}>
              One back
            </button>
          ) : (
            <button type="button" class="button quiet" onClick={() => router.go("/sets")}>
              All sets
            </button>
          )}
        </div>
      </section>
    </>
  );
}
