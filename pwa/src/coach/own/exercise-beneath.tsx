import { withExercise } from "../block/places";
import { useDesk } from "../shell/desk-state";
import type { ExerciseProps } from "../writer/exercise-editor";
import { useBeneath, useWriter } from "../writer/writer-state";
import { aroundBeneath, exerciseBeneath } from "./beneath";
import { OwnMark } from "./own-mark";

/** Under the head of an exercise of one athlete's own: what the block says around its sets. */
export function ExerciseBeneath({ plan, at, session }: ExerciseProps) {
  const writer = useWriter();
  const beneath = useBeneath();
  const exercises = useDesk().exercises.value;
  if (!beneath) return null;
  const nameOf = (key: string) => exercises.find((each) => each.key === key)?.name ?? key;
  const base = exerciseBeneath(beneath.block, session.key, plan.key);
  if (!base) return <OwnMark of={nameOf(plan.exercise)}>The block does not have it.</OwnMark>;
  const says = aroundBeneath(plan, base, nameOf);
  if (says.length === 0) return null;
  const back = () => writer.edit((block) => withExercise(block, at, () => base));
  return (
    <OwnMark of={nameOf(plan.exercise)} back={back}>
      The block: {says.join(" · ")}.
    </OwnMark>
  );
}
