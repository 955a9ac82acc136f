import { useArmed } from "../device/armed";
import type { Due } from "./felt";
import { type OcclusionKnown, useTell } from "./known";
import type { Worn } from "./worn";

interface Props {
  readonly known: OcclusionKnown;
  readonly worn: Worn;
  readonly due: Due;
}

const STEPS = Array.from({ length: 11 }, (_, value) => value);

/** One tap while the limb rests; a wrap that has become too tight is asked about until it is not. */
export function TightnessQuestion({ known, worn, due }: Props) {
  const tell = useTell();
  const armed = useArmed();
  const { revision, session } = worn.wrap;
  const place = { revision, session, set: due.after };
  return (
    <fieldset class="wrap-tight">
      <legend>Not numb: how tight now?</legend>
      {due.was !== null && (
        <p class="wrap-over" role="alert">
          {due.was} is too tight, at most {due.most}. Loosen it now, then say again.
        </p>
      )}
      {STEPS.map((value) => (
        <button
          key={value}
          type="button"
          class="button"
          disabled={!armed}
          onClick={() => void tell("wrap.check", { numb: false, tightness: value }, place)}
        >
          {value}
        </button>
      ))}
      <p class="small">
        {known.questions.tightness.map(({ value, text }) => `${value} ${text}`).join(", ")}
      </p>
    </fieldset>
  );
}
