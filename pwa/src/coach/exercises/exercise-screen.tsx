import type { CatalogueEntry, ExercisePage } from "../answers";
import { exercise } from "../desk";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { athletePath, EXERCISES } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { AthleteChooser, named, useChosenAthlete } from "../writer/athlete-chooser";
import { Alternatives } from "./alternatives";
import { ForOne } from "./for-one";
import { OwnCues } from "./own-cues";
import { OwnPart } from "./own-part";
import { PicturePart } from "./picture-part";
import { useForAthlete } from "./use-for-athlete";
import { kitWords, muscleWords } from "./words";

/** One exercise: what it works, what it needs, and what it is for one athlete. */
export function ExerciseScreen({ name: key }: { readonly name: string }) {
  const load = useLoad<ExercisePage>(`exercise ${key}`, () => exercise(key));
  const title = load.now.state === "ready" ? load.now.value.exercise.name : "Exercise";
  return (
    <Page title={title} above={<Link to={EXERCISES}>Exercises</Link>}>
      <Loaded load={load} what="this exercise">
        {(page) => <Shown page={page} onChanged={load.again} />}
      </Loaded>
    </Page>
  );
}

interface ShownProps {
  readonly page: ExercisePage;
  readonly onChanged: () => void;
}

function Shown({ page, onChanged }: ShownProps) {
  const athlete = useChosenAthlete();
  const load = useForAthlete(athlete.id);
  const of = load.now.state === "ready" ? load.now.value : null;
  const who = named(athlete);
  return (
    <div class="exercise-page">
      <div>
        <Facts exercise={page.exercise} />
        <h2>Cues</h2>
        <ul class="cues">
          {page.exercise.cues.map((cue) => (
            <li key={cue}>{cue}</li>
          ))}
        </ul>
        {!page.exercise.own && (
          <OwnCues
            key={page.exercise.cues.join(";")}
            exercise={page.exercise}
            onChanged={onChanged}
          />
        )}
        <PicturePart
          key={page.picture?.hash}
          exercise={page.exercise.key}
          picture={page.picture}
          onChanged={onChanged}
        />
        <Alternatives keys={page.exercise.alternatives} of={of} />
        <AvoidedBy page={page} />
        {page.exercise.own && <OwnPart exercise={page.exercise} onChanged={onChanged} />}
      </div>
      <section aria-label="For one athlete">
        <AthleteChooser label="For" athlete={athlete} />
        {who && (
          <Loaded load={load} what="what it is for this athlete">
            {(known) => known && <ForOne who={who} exercise={page.exercise.key} of={known} />}
          </Loaded>
        )}
      </section>
    </div>
  );
}

function Facts({ exercise: one }: { readonly exercise: CatalogueEntry }) {
  return (
    <dl class="basis">
      <Fact name="Works" says={muscleWords(one.prime)} />
      {one.helpers.length > 0 && <Fact name="Helped by" says={muscleWords(one.helpers)} />}
      <Fact name="Needs" says={kitWords(one)} />
      {one.one_sided && <Fact name="Sides" says="One at a time" />}
      {one.needs_safeties && (
        <Fact
          name="Safety"
          says="A failed repetition comes to rest on the lifter: safeties at the right height, or a spotter."
        />
      )}
    </dl>
  );
}

function Fact({ name, says }: { readonly name: string; readonly says: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{says}</dd>
    </div>
  );
}

function AvoidedBy({ page }: { readonly page: ExercisePage }) {
  const avoided = page.avoided_by;
  return (
    <>
      <h2>To be avoided by</h2>
      {avoided.length === 0 && <p class="soft">Nobody in your squad.</p>}
      <ul class="plain-list">
        {avoided.map(({ id, name, where, note }) => (
          <li key={`${id} ${where}`}>
            <Link to={athletePath(id, "person")}>{name}</Link>, {where}
            {note && <small>{note}</small>}
          </li>
        ))}
      </ul>
    </>
  );
}
