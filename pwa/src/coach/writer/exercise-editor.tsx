import type { ExercisePlan, Method, SessionPlan } from "../../api/types";
import { moveExercise, removeExercise } from "../block/exercises";
import { own, within } from "../block/faults";
import { METHOD_NAMES, withMethod } from "../block/methods";
import { pathOf, withExercise, type ExerciseAt } from "../block/places";
import { ChoiceField } from "../fields/choice-field";
import { ExerciseField } from "../fields/exercise-field";
import { TextField } from "../fields/text-field";
import { FindingList } from "../findings/finding-list";
import { ExerciseBeneath } from "../own/exercise-beneath";
import { OwnNotes } from "../own/own-notes";
import { useDesk } from "../shell/desk-state";
import { FaultList } from "../shell/states";
import { ExerciseMore } from "./exercise-more";
import { Lines } from "./lines";
import { OcclusionPatterns } from "./occlusion-patterns";
import { SheetRemarks } from "./sheet-remarks";
import { useKeys } from "./use-keys";
import { useBeneath, useRemarks, useWriter } from "./writer-state";

export interface ExerciseProps {
  readonly plan: ExercisePlan;
  readonly at: ExerciseAt;
  readonly session: SessionPlan;
}

interface ExerciseEditorProps extends ExerciseProps {
  readonly last: boolean;
}

/** Changes the exercise; what is typed into one field is undone together. */
export function useExerciseEdit({ plan, at }: Pick<ExerciseProps, "plan" | "at">) {
  const writer = useWriter();
  return (part: Partial<ExercisePlan>, field = "") =>
    writer.edit(
      (block) => withExercise(block, at, (each) => present({ ...each, ...part })),
      field && `${plan.key} ${field}`,
    );
}

export function ExerciseEditor({ plan, at, session, last }: ExerciseEditorProps) {
  const { faults, findings } = useRemarks();
  const path = pathOf(at);
  const shown = ["exercise", "group", "rest", "cue"].map((field) => `${path}.${field}`);
  const others = own(faults, path, "sets").filter(
    (fault) => !shown.some((field) => within([fault], field).length > 0),
  );
  return (
    <li class="exercise">
      <ExerciseHead plan={plan} at={at} session={session} last={last} />
      <ExerciseBeneath plan={plan} at={at} session={session} />
      <OwnNotes session={session.key} exercise={plan.key} />
      <FaultList faults={others} at={path} />
      <FindingList findings={own(findings, path, "sets")} />
      <Lines plan={plan} at={at} session={session} />
      {plan.method === "occlusion" && <OcclusionPatterns plan={plan} at={at} session={session} />}
      <SheetRemarks plan={plan} at={at} session={session} />
      <ExerciseMore plan={plan} at={at} session={session} />
    </li>
  );
}

function ExerciseHead({ plan, at, session, last }: ExerciseEditorProps) {
  const writer = useWriter();
  const { faults } = useRemarks();
  const edit = useExerciseEdit({ plan, at });
  const exercises = useDesk().exercises.value;
  const name = exercises.find((each) => each.key === plan.exercise)?.name ?? plan.exercise;
  const path = pathOf(at);
  const fixed = useBeneath() !== null;
  const step = (by: -1 | 1) => writer.edit((block) => moveExercise(block, at, at.exercise + by));
  const head = useKeys((event) => {
    const by = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    return !fixed && event.altKey && (by === -1 || by === 1) ? () => step(by) : null;
  });
  return (
    <div class="exercise-head" role="group" aria-label={name} ref={head}>
      <span class="ordinal" aria-hidden="true">
        {at.exercise + 1}
      </span>
      <ExerciseField
        label={`Exercise ${at.exercise + 1} of ${session.name}`}
        quiet
        width="w20"
        value={plan.exercise}
        faults={within(faults, `${path}.exercise`)}
        onValue={(exercise) => edit({ exercise, implement: undefined })}
      />
      <ChoiceField<Method>
        label="Method"
        quiet
        choices={METHOD_NAMES}
        value={plan.method}
        onValue={(method) =>
          writer.edit((block) => withExercise(block, at, (each) => withMethod(each, method)))
        }
      />
      <TextField
        label="Group"
        width="w3"
        longest={8}
        value={plan.group ?? ""}
        faults={within(faults, `${path}.group`)}
        onValue={(group) => edit({ group: group || undefined }, "group")}
      />
      <ExerciseActions plan={plan} at={at} name={name} last={last} onStep={step} />
    </div>
  );
}

interface ActionsProps extends Pick<ExerciseEditorProps, "plan" | "at" | "last"> {
  readonly name: string;
  readonly onStep: (by: -1 | 1) => void;
}

function ExerciseActions({ plan, at, name, last, onStep }: ActionsProps) {
  const writer = useWriter();
  const fixed = useBeneath() !== null;
  return (
    <span class="actions">
      <button
        type="button"
        class="plain"
        onClick={() => (writer.copied.value = { kind: "exercise", exercise: plan, name })}
      >
        Copy<span class="sr-only"> {name}</span>
      </button>
      {!fixed && (
        <>
          <button
            type="button"
            class="plain"
            disabled={at.exercise === 0}
            onClick={() => onStep(-1)}
          >
            Earlier<span class="sr-only">: {name}</span>
          </button>
          <button type="button" class="plain" disabled={last} onClick={() => onStep(1)}>
            Later<span class="sr-only">: {name}</span>
          </button>
        </>
      )}
      <button
        type="button"
        class="plain"
        onClick={() => writer.edit((block) => removeExercise(block, at))}
      >
        {fixed ? "Leave out" : "Remove"}
        <span class="sr-only"> {name}</span>
      </button>
    </span>
  );
}

function present(plan: ExercisePlan): ExercisePlan {
  const kept = Object.entries(plan).filter(([, value]) => value !== undefined);
  return Object.fromEntries(kept) as ExercisePlan;
}
