import type { Line } from "../block/lines";
import { lineInWords } from "../block/wish-words";
import { withExercise } from "../block/places";
import type { ExerciseProps } from "../writer/exercise-editor";
import { useBeneath, useWriter } from "../writer/writer-state";
import { exerciseBeneath, lineBack, lineBeneath } from "./beneath";
import { OwnMark } from "./own-mark";

interface LineBeneathProps extends ExerciseProps {
  readonly line: Line;
}

/** Under a line of one athlete's own: what the block says there. */
export function LineBeneath({ plan, at, session, line }: LineBeneathProps) {
  const writer = useWriter();
  const beneath = useBeneath();
  const base = beneath && exerciseBeneath(beneath.block, session.key, plan.key);
  const says = base ? lineBeneath(line, base) : null;
  if (!base || says === null) return null;
  const sets = lineBack(plan.sets, line, base);
  const back = () => writer.edit((block) => withExercise(block, at, (each) => ({ ...each, sets })));
  return (
    <OwnMark
      of={lineInWords(line.sets.length, line.asks)}
      back={sets.length > 0 ? back : undefined}
    >
      The block: {says}.
    </OwnMark>
  );
}
