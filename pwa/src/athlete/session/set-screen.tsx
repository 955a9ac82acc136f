import type { SheetExercise } from "../../api/types";
import type { Step } from "../../offline/plan";
import { askedInVain, failed } from "../../offline/swaps";
import { type Correcting, useApp } from "../app-context";
import { useAwake } from "../device/awake";
import { useUnderWay } from "../hooks";
import { later, useMore } from "../later";
import { TopBar } from "../top-bar";
import { atHand } from "./at-hand";
import { StripFirst } from "./rigging";
import { type SessionView, viewSession } from "./view";
import { WorkSet } from "./work-set";

const AllDone = later("AllDone");
const FailedFirst = later("FailedFirst");
const OcclusionSet = later("OcclusionSet");
const RampStep = later("RampStep");

/** The heart of the app: one set at a time, what to lift above, what was done below. */
export function SetScreen() {
  const { focus } = useApp();
  const found = useUnderWay();
  useAwake();
  if (!found) return <NothingUnderWay />;
  const { session, earlier } = found;
  const view = viewSession(session, focus.value.exercise);
  const { correcting } = focus.value;
  const step = correcting
    ? ({ kind: "set", exercise: correcting.exercise, set: correcting.set } as const)
    : view.next;
  const exercise = exerciseAt(view, step, correcting);
  const set = step?.kind === "set" ? exercise?.sets.find(({ key }) => key === step.set) : undefined;
  const vain =
    exercise && !correcting
      ? askedInVain(exercise, failed(session.sheet.exercises, session.record), session.record)
      : null;
  const here = exercise && set && atHand(view, exercise, set, correcting?.side ?? null);
  return (
    <div class="screen set-screen">
      <TopBar title={session.sheet.name} back="/" />
      <StripFirst view={view} next={exercise ?? null} />
      {exercise && vain && <FailedFirst view={view} exercise={exercise} use={vain} />}
      {exercise && !vain && step?.kind === "ramp" && (
        <RampStep
          key={`${exercise.name} ${exercise.key} ${step.ramp}`}
          view={view}
          exercise={exercise}
          step={step}
        />
      )}
      {here &&
        !vain &&
        (here.exercise.method === "occlusion" && !here.answer ? (
          <OcclusionSet key={here.exercise.key} view={view} exercise={here.exercise} />
        ) : (
          <WorkSet
            key={`${here.exercise.name} ${here.set.key} ${here.record?.entry.id ?? ""}`}
            here={here}
            earlier={earlier}
          />
        ))}
      {!(exercise && step) && <AllDone view={view} />}
      <Tests view={view} />
    </div>
  );
}

/** A set that is corrected stays what it was done as. */
function exerciseAt(
  { exercises, answered }: SessionView,
  step: Step | null,
  correcting: Correcting | null,
): SheetExercise | undefined {
  const done = answered.find(
    ({ set, side }) => set.key === correcting?.set && side === correcting.side,
  );
  return done?.exercise ?? exercises.find(({ key }) => key === step?.exercise);
}

/** What a maximum test has found is told from here, however its attempts come about. */
function Tests({ view }: { readonly view: SessionView }) {
  const wanted = view.exercises.some(({ method }) => method === "maximum-test");
  const { more } = useMore(wanted);
  return wanted && more ? <more.TellTests view={view} /> : null;
}

function NothingUnderWay() {
  const { router } = useApp();
  return (
    <div class="screen">
      <TopBar title="No session under way" back="/" />
      <main class="page">
        <p class="lead">Start one from Today.</p>
        <button type="button" class="button main" onClick={() => router.replace("/")}>
          To Today
        </button>
      </main>
    </div>
  );
}
