import { setKeys } from "../block/exercises";
import { patternOf, withPattern } from "../block/pattern";
import { withExercise } from "../block/places";
import { occlusionGuide } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { useLoad } from "../shell/use-load";
import type { ExerciseProps } from "./exercise-editor";
import { useWriter } from "./writer-state";

const OWN = "";

/** Fills the sets of an occlusion exercise by a pattern that the server knows. */
export function OcclusionPatterns({ plan, at, session }: ExerciseProps) {
  const writer = useWriter();
  const load = useLoad("occlusion guide", occlusionGuide);
  if (load.now.state !== "ready") return null;
  const { patterns } = load.now.value;
  const names = Object.fromEntries(patterns.map(({ key, name }) => [key, name]));
  const choose = (key: string) => {
    const pattern = patterns.find((each) => each.key === key);
    if (!pattern) return;
    const taken = setKeys(session);
    writer.edit((block) =>
      withExercise(block, at, (each) => withPattern(each, pattern, taken, writer.random)),
    );
  };
  return (
    <div class="fields occlusion-patterns">
      <ChoiceField<string>
        label="Sets by a pattern"
        choices={{ [OWN]: "own sets", ...names }}
        value={patternOf(plan, patterns)?.key ?? OWN}
        onValue={choose}
      />
    </div>
  );
}
