import type { SessionPlan } from "../../api/types";
import { own, within } from "../block/faults";
import { addExercise, putExercise, type Picked } from "../block/exercises";
import { pathOf, sessionAt, withSession, type SessionAt } from "../block/places";
import { removeSession, setDay, swapSession } from "../block/weeks";
import { ChoiceField } from "../fields/choice-field";
import { ExerciseField } from "../fields/exercise-field";
import { LongTextField, TextField } from "../fields/text-field";
import { FindingList } from "../findings/finding-list";
import { OwnNotes } from "../own/own-notes";
import { ExercisesLeftOut, SessionBeneath } from "../own/session-beneath";
import { FaultList } from "../shell/states";
import { DAYS } from "../shell/when";
import { ExerciseEditor } from "./exercise-editor";
import { useBeneath, useRemarks, useWriter } from "./writer-state";

interface SessionEditorProps {
  /** The loads shown are of an older text. */
  readonly stale: boolean;
  /** An athlete is chosen, so that there are loads to show. */
  readonly shown: boolean;
}

export function SessionEditor({ stale, shown }: SessionEditorProps) {
  const writer = useWriter();
  const { faults, findings, sheets } = useRemarks();
  const place = writer.place.value;
  if (place.session === null) {
    return <p class="aside-note">Choose a session above, or add one to this week.</p>;
  }
  const at: SessionAt = { week: place.week, session: place.session };
  const session = sessionAt(writer.block.value, at);
  if (!session) return <p class="aside-note">Choose a session above.</p>;
  const minutes = sheets.find((sheet) => sheet.session === session.key)?.minutes;
  const look = `session-editor${stale ? " stale" : ""}${shown ? " with-loads" : ""}`;
  return (
    <section class={look} aria-label={`Session ${session.name}`} key={session.key}>
      <SessionBar session={session} at={at} />
      <SessionBeneath session={session} at={at} />
      <OwnNotes session={session.key} exercise="" />
      {minutes !== undefined && <p class="soft">About {minutes} minutes for this athlete.</p>}
      <FaultList faults={own(faults, pathOf(at), "exercises")} at={pathOf(at)} />
      <FindingList findings={own(findings, pathOf(at), "exercises")} />
      <ol class="exercises">
        {session.exercises.map((plan, exercise) => (
          <ExerciseEditor
            key={plan.key}
            plan={plan}
            at={{ ...at, exercise }}
            session={session}
            last={exercise === session.exercises.length - 1}
          />
        ))}
      </ol>
      <ExercisesLeftOut session={session} at={at} />
      <AddExercise at={at} first={session.exercises.length === 0} />
      <SessionNote session={session} at={at} />
    </section>
  );
}

interface SessionProps {
  readonly session: SessionPlan;
  readonly at: SessionAt;
}

const DAY_CHOICES: Readonly<Record<string, string>> = Object.fromEntries(
  DAYS.map((name, place) => [String(place + 1), name]),
);

function SessionBar({ session, at }: SessionProps) {
  const writer = useWriter();
  const faults = useRemarks().faults;
  const count = writer.block.value.weeks[at.week]?.sessions.length ?? 0;
  const fixed = useBeneath() !== null;
  return (
    <div class="bar">
      <TextField
        label="Session"
        width="w20"
        longest={80}
        value={session.name}
        faults={within(faults, `${pathOf(at)}.name`)}
        onValue={(name) =>
          writer.edit(
            (block) => withSession(block, at, (each) => ({ ...each, name })),
            `${session.key} name`,
          )
        }
      />
      <ChoiceField
        label="Day"
        choices={DAY_CHOICES}
        value={String(session.day)}
        onValue={(day) => writer.edit((block) => setDay(block, at, Number(day)))}
      />
      {!fixed && <SessionMoves session={session} at={at} count={count} />}
      <button
        type="button"
        class="plain"
        onClick={() => {
          writer.edit((block) => removeSession(block, at));
          writer.place.value = {
            week: at.week,
            session: count > 1 ? Math.max(0, at.session - 1) : null,
          };
        }}
      >
        {fixed ? "Leave the session out" : "Remove the session"}
      </button>
    </div>
  );
}

interface SessionMovesProps extends SessionProps {
  /** How many sessions the week has. */
  readonly count: number;
}

function SessionMoves({ session, at, count }: SessionMovesProps) {
  const writer = useWriter();
  const swap = (step: -1 | 1) => writer.edit((block) => swapSession(block, at, step));
  return (
    <>
      <button
        type="button"
        class="plain"
        onClick={() => (writer.copied.value = { kind: "session", session })}
      >
        Copy
      </button>
      <button type="button" class="plain" disabled={at.session === 0} onClick={() => swap(-1)}>
        Earlier
      </button>
      <button
        type="button"
        class="plain"
        disabled={at.session === count - 1}
        onClick={() => swap(1)}
      >
        Later
      </button>
    </>
  );
}

function AddExercise({ at, first }: { readonly at: SessionAt; readonly first: boolean }) {
  const writer = useWriter();
  const copied = writer.copied.value;
  const add = (exercise: Picked) => {
    writer.edit((block) => addExercise(block, at, exercise, writer.random));
    writer.fresh.value = sessionAt(writer.block.peek(), at)?.exercises.at(-1)?.key ?? null;
  };
  return (
    <div class="bar add-exercise">
      <ExerciseField
        label={first ? "First exercise" : "Next exercise"}
        hint="type part of its name, Enter"
        width="w20"
        value=""
        once
        onValue={(_, exercise) => add(exercise)}
      />
      {copied?.kind === "exercise" && (
        <button
          type="button"
          onClick={() =>
            writer.edit((block) =>
              putExercise(block, at, copied.exercise, Number.POSITIVE_INFINITY, writer.random),
            )
          }
        >
          Paste {copied.name}
        </button>
      )}
    </div>
  );
}

function SessionNote({ session, at }: SessionProps) {
  const writer = useWriter();
  return (
    <LongTextField
      label="Note to this session"
      width="full"
      longest={1000}
      value={session.note ?? ""}
      onValue={(note) =>
        writer.edit(
          (block) => withSession(block, at, (each) => ({ ...each, note: note || undefined })),
          `${session.key} note`,
        )
      }
    />
  );
}
