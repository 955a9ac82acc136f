import { useState } from "preact/hooks";

import type { CatalogueEntry } from "../answers";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { TextField } from "../fields/text-field";
import { muscleName } from "../monitoring/muscles";
import { counted } from "../shell/counted";
import { useDesk } from "../shell/desk-state";
import { keep, kept } from "../shell/kept";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { NEW_EXERCISE } from "../shell/route";
import { Failure } from "../shell/states";
import { AthleteChooser, named, useChosenAthlete } from "../writer/athlete-chooser";
import { ExerciseTable } from "./exercise-table";
import { EVERYTHING, found, musclesOf, type ByKey, type Wanted } from "./search";
import { useForAthlete } from "./use-for-athlete";

/** Every exercise that can be prescribed, to be searched. */
export function ExercisesScreen() {
  const exercises = useDesk().exercises.value;
  const [wanted, want] = useWanted();
  const athlete = useChosenAthlete();
  const load = useForAthlete(athlete.id);
  const of = load.now.state === "ready" ? load.now.value : null;
  const here: ByKey | null = of && new Map(of.exercises.map((one) => [one.key, one]));
  const who = named(athlete);
  return (
    <Page title="Exercises" aside={<Link to={NEW_EXERCISE}>Write your own</Link>}>
      <form class="fields" role="search" onSubmit={(event) => event.preventDefault()}>
        <TextField
          label="Name, muscle or implement"
          width="w20"
          value={wanted.text}
          onValue={(text) => want({ ...wanted, text })}
        />
        <MuscleChoice
          exercises={exercises}
          value={wanted.muscle}
          onValue={(muscle) => want({ ...wanted, muscle })}
        />
        <AthleteChooser label="For" athlete={athlete} />
        {who && (
          <TruthField
            label={`Only what ${who.name} can do with this kit`}
            value={wanted.onlyHere}
            onValue={(onlyHere) => want({ ...wanted, onlyHere })}
          />
        )}
        {exercises.some((one) => one.archived) && (
          <TruthField
            label="Archived ones too"
            value={wanted.archived}
            onValue={(archived) => want({ ...wanted, archived })}
          />
        )}
      </form>
      {load.now.state === "failed" && <Failure fault={load.now.fault} again={load.again} />}
      {who && of?.kit === null && <p class="aside-note">No kit is written down for {who.name}.</p>}
      <Found
        all={exercises}
        listed={found(exercises, wanted, here)}
        here={here}
        onAll={wanted === EVERYTHING ? null : () => want(EVERYTHING)}
      />
    </Page>
  );
}

interface MuscleChoiceProps {
  readonly exercises: readonly CatalogueEntry[];
  readonly value: string;
  readonly onValue: (muscle: string) => void;
}

function MuscleChoice({ exercises, value, onValue }: MuscleChoiceProps) {
  const muscles = musclesOf(exercises).map((one) => [one, muscleName(one)]);
  const choices = Object.fromEntries([["", "any"], ...muscles]) as Record<string, string>;
  return <ChoiceField label="Muscle" value={value} choices={choices} onValue={onValue} />;
}

interface FoundProps {
  readonly all: readonly CatalogueEntry[];
  readonly listed: readonly CatalogueEntry[];
  readonly here: ByKey | null;
  /** Null where nothing is left out. */
  readonly onAll: (() => void) | null;
}

function Found({ all, listed, here, onAll }: FoundProps) {
  const part = listed.length < all.length ? ` of ${all.length}` : "";
  return (
    <>
      <p class="found">
        <span role="status">
          {listed.length === 0
            ? "No exercise is like that."
            : `${counted(listed.length, "exercise", "exercises")}${part}`}
        </span>
        {onAll && listed.length < all.length && (
          <button type="button" class="plain" onClick={onAll}>
            Show all
          </button>
        )}
      </p>
      {listed.length > 0 && <ExerciseTable exercises={listed} here={here} />}
    </>
  );
}

const FILTER = "exercises.wanted";

/** What was last looked for, so that the way back from an exercise leads to the same list. */
function useWanted(): [Wanted, (wanted: Wanted) => void] {
  const { shelf } = useDesk();
  const [wanted, setWanted] = useState(() => (kept(shelf, FILTER) as Wanted | null) ?? EVERYTHING);
  const want = (next: Wanted) => {
    keep(shelf, FILTER, next);
    setWanted(next);
  };
  return [wanted, want];
}
