import type { AthleteExercises, ForAthlete, Named } from "../answers";
import { Link } from "../shell/link";
import { athletePath } from "../shell/route";
import { centimetres, hereWords } from "./words";

interface ForOneProps {
  readonly who: Named;
  readonly exercise: string;
  readonly of: AthleteExercises;
}

/** The exercise for one athlete: whether it can be done there, from where to where it goes. */
export function ForOne({ who, exercise, of }: ForOneProps) {
  const here = of.exercises.find((one) => one.key === exercise);
  if (here === undefined) return null;
  return (
    <>
      <p class={here.avoid.length > 0 ? "mind" : undefined}>
        {of.kit === null ? (
          <>
            No kit is written down. <Link to={athletePath(who.id, "kit")}>Write one down</Link>
          </>
        ) : (
          <>
            {of.kit}: {hereWords(here)}.
          </>
        )}
      </p>
      <Way who={who} here={here} stature={of.stature_cm} />
    </>
  );
}

interface WayProps {
  readonly who: Named;
  readonly here: ForAthlete;
  readonly stature: number | null;
}

function Way({ who, here, stature }: WayProps) {
  const { way } = here;
  const person = <Link to={athletePath(who.id, "person")}>Person and maxima</Link>;
  if (way === null) {
    return (
      <p class="aside-note">
        {here.told_by === "stature"
          ? "Start height and range come from stature or from two tape readings; neither is known yet: "
          : "No start height: nothing moves that a hand holds. Where a band is hung, two tape readings tell it: "}
        {person}.
      </p>
    );
  }
  return (
    <>
      <dl class="calculated">
        <Height name="Starts at" cm={way.start_cm} />
        <Height name="Ends at" cm={way.end_cm} />
        <Height name="Range" cm={way.range_cm} />
      </dl>
      <p class="aside-note">
        {way.measured
          ? "Above the floor, measured by tape. "
          : `Above the floor, worked out from a stature of ${centimetres(stature ?? 0)}. Bands and the landmine rest on it; two tape readings are better: `}
        {person}
        {way.measured ? "" : "."}
      </p>
    </>
  );
}

function Height({ name, cm }: { readonly name: string; readonly cm: number }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{centimetres(cm)}</dd>
    </div>
  );
}
