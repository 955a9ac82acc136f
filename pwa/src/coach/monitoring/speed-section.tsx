import { useState } from "preact/hooks";

import type { SpeedExercise } from "../answers";
import { speed } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import type { Asked } from "./monitoring-part";
import { SpeedSets } from "./speed-sets";
import { SpeedWeeks } from "./speed-weeks";
import { VelocityPlot } from "./velocity-plot";

export interface SpeedSeen extends Asked {
  readonly exercise: SpeedExercise;
}

/** How fast loads were moved, and what that says of the maximum. */
export function SpeedSection({ id, weeks }: Asked) {
  const load = useLoad(`speed ${id} ${weeks}`, () => speed(id, weeks));
  return (
    <section>
      <h2>Speed and power</h2>
      <Loaded load={load} what="the speed work">
        {(exercises) => <Chosen exercises={exercises} id={id} weeks={weeks} />}
      </Loaded>
    </section>
  );
}

function Chosen({ exercises, ...asked }: Asked & { readonly exercises: readonly SpeedExercise[] }) {
  const [chosen, setChosen] = useState<string | null>(null);
  const exercise = exercises.find((one) => one.exercise === chosen) ?? oftenest(exercises);
  if (!exercise) {
    return <p class="lead">No speed set was done in these weeks, and no velocity was measured.</p>;
  }
  return (
    <>
      <ChoiceField
        label="Exercise"
        choices={Object.fromEntries(exercises.map((one) => [one.exercise, one.name]))}
        value={exercise.exercise}
        onValue={setChosen}
      />
      <SpeedSets key={`sets ${exercise.exercise}`} exercise={exercise} {...asked} />
      <SpeedWeeks exercise={exercise} {...asked} />
      <VelocityPlot exercise={exercise} {...asked} />
    </>
  );
}

function oftenest(exercises: readonly SpeedExercise[]): SpeedExercise | undefined {
  return exercises.toSorted((one, other) => other.sessions.length - one.sessions.length)[0];
}
