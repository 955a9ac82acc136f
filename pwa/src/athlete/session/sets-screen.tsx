import type { SheetExercise, SheetSet } from "../../api/types";
import type { Side } from "../../offline/entry";
import { type Answer, answerKey } from "../../offline/fold";
import { asDone, openSides } from "../../offline/plan";
import { useApp } from "../app-context";
import { useUnderWay, useUnits } from "../hooks";
import { TopBar } from "../top-bar";
import { loadInWords } from "../words/loads";
import { answerInWords, targetInWords } from "../words/sets";
import { useRecorder } from "./recording";
import { SwapButton } from "./swap-button";
import { answersOf, plannedLoad, type SessionView, viewSession } from "./view";

/** Every set of the session: what was done, what is open; each can be corrected. */
export function SetsScreen() {
  const { router, focus } = useApp();
  const found = useUnderWay();
  if (!found) {
    return (
      <div class="screen">
        <TopBar title="All sets" back="/" />
        <main class="page">
          <p class="lead">No session is under way.</p>
        </main>
      </div>
    );
  }
  const view = viewSession(found.session, focus.value.exercise);
  return (
    <div class="screen">
      <TopBar title="All sets" back="/set" />
      <main class="page">
        {view.exercises.map((exercise) => (
          <ExercisePart key={exercise.key} view={view} exercise={exercise} />
        ))}
        <button type="button" class="button main" onClick={() => router.go("/finish")}>
          Finish the session
        </button>
      </main>
    </div>
  );
}

interface Props {
  readonly view: SessionView;
  readonly exercise: SheetExercise;
}

function ExercisePart({ view, exercise }: Props) {
  const { router, focus } = useApp();
  const recorder = useRecorder(view.session);
  const open = view.open.some((step) => step.exercise === exercise.key);
  const next = view.next?.exercise === exercise.key;
  return (
    <section class="exercise-part">
      <h2>{exercise.name}</h2>
      {exercise.locked && <p class="note">{exercise.locked}</p>}
      {[...(exercise.cautions ?? []), ...(exercise.notes ?? [])].map((line) => (
        <p key={line} class="small">
          {line}
        </p>
      ))}
      <ol class="set-list">
        {exercise.sets.flatMap((set, index) =>
          rowsOf(view, exercise, set).map(({ side, answer }) => (
            <SetRow
              key={answerKey(set.key, side)}
              view={view}
              exercise={wayOf(view, exercise, set, side)}
              set={set}
              side={side}
              answer={answer}
              place={index + 1}
            />
          )),
        )}
      </ol>
      <div class="row">
        {open && !next && (
          <button
            type="button"
            class="button"
            onClick={() => {
              focus.value = { exercise: exercise.key, correcting: null };
              router.go("/set");
            }}
          >
            Do this next
          </button>
        )}
        {!exercise.locked && exercise.method !== "occlusion" && (
          <button type="button" class="button quiet" onClick={() => recorder.add(exercise.key)}>
            One more set
          </button>
        )}
        {open && <SwapButton exercise={exercise} />}
      </div>
    </section>
  );
}

interface SideRow {
  readonly side: Side | null;
  readonly answer: Answer | null;
}

/** A set that was begun on one side is a line for each. */
function rowsOf(view: SessionView, exercise: SheetExercise, set: SheetSet): SideRow[] {
  const record = view.session.record.sets.get(set.key);
  if (!record) return [{ side: null, answer: null }];
  const told = answersOf(record).map(([side, answer]) => ({ side, answer }));
  return [...told, ...openSides(exercise, record).map((side) => ({ side, answer: null }))];
}

/** The exercise as this set of it was done, or is to be done. */
function wayOf(
  { session }: SessionView,
  exercise: SheetExercise,
  set: SheetSet,
  side: Side | null,
): SheetExercise {
  const first = session.record.sets.get(set.key)?.firsts.get(side);
  const done = first && asDone(session.sheet, session.record, exercise.key, first);
  return done || exercise;
}

interface RowProps extends Props, SideRow {
  readonly set: SheetSet;
  readonly place: number;
}

function SetRow({ view, exercise, set, side, answer, place }: RowProps) {
  const now = view.exercises.find(({ key }) => key === exercise.key);
  const swapped = now?.name !== exercise.name;
  const { router, focus } = useApp();
  const units = useUnits();
  const record = view.session.record.sets.get(set.key);
  const planned = plannedLoad(exercise, set, view.session);
  const load = planned === null ? undefined : exercise.loads?.[planned];
  const plan =
    targetInWords(set.target) + (load ? ` at ${loadInWords(exercise, load.kg, units)}` : "");
  return (
    <li>
      <button
        type="button"
        class={answer ? "set-row set-row-done" : "set-row"}
        disabled={Boolean(exercise.locked)}
        onClick={() => {
          const correcting = { exercise: exercise.key, set: set.key, side };
          focus.value = { ...focus.value, correcting };
          router.go("/set");
        }}
      >
        <span class="set-row-number">{place}</span>
        <span>
          {side && <b>{side} </b>}
          {answer ? answerInWords(answer, exercise, units) : plan}
          {answer && swapped && `, ${exercise.name}`}
          {record?.conflict && <em> Two phones gave different answers.</em>}
        </span>
        <span class="set-row-act">{answer ? "Correct" : "Record"}</span>
      </button>
    </li>
  );
}
