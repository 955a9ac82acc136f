import { useTelling } from "./telling";

const SCORES = [1, 2, 3, 4, 5];

/** Our own words. */
const WORDS: Readonly<Record<number, string>> = {
  1: "worn out",
  2: "tired",
  3: "as usual",
  4: "fresh",
  5: "ready for anything",
};

/** How ready the athlete is today; a second tap on the same day corrects the first. */
export function ReadyPart() {
  const { today, tell } = useTelling("readiness");
  const score = today?.body.score ?? null;
  return (
    <fieldset class="scale">
      <legend>How ready are you today?</legend>
      <div class="scale-steps">
        {SCORES.map((step) => (
          <button
            key={step}
            type="button"
            aria-pressed={score === step}
            aria-label={`${step}, ${WORDS[step]}`}
            onClick={() => void (score === step ? null : tell({ score: step }))}
          >
            {step}
          </button>
        ))}
      </div>
      <p class="scale-word" aria-live="polite">
        {score === null
          ? "1 is worn out, 3 as usual, 5 ready for anything."
          : `${score}, ${WORDS[score]}: recorded for today.`}
      </p>
    </fieldset>
  );
}
