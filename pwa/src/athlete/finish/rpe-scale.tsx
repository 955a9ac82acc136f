interface Props {
  readonly value: number | null;
  readonly onChange: (value: number) => void;
}

/** Foster's session scale (Foster 2001), 0 to 10; not every step has a word. */
const WORDS: Readonly<Record<number, string>> = {
  0: "rest",
  1: "very, very easy",
  2: "easy",
  3: "moderate",
  4: "somewhat hard",
  5: "hard",
  7: "very hard",
  10: "maximal",
};

const STEPS = Array.from({ length: 11 }, (_, step) => step);

/** How hard the whole session was. */
export function RpeScale({ value, onChange }: Props) {
  const whole = value === null ? null : Math.floor(value);
  const half = value !== null && value !== whole;
  return (
    <fieldset class="scale">
      <legend>How hard was the whole session?</legend>
      <div class="scale-steps">
        {STEPS.map((step) => (
          <button
            key={step}
            type="button"
            aria-pressed={whole === step}
            aria-label={`${step}${WORDS[step] ? `, ${WORDS[step]}` : ""}`}
            onClick={() => onChange(step)}
          >
            {step}
          </button>
        ))}
        <button
          type="button"
          class="scale-half"
          aria-pressed={half}
          disabled={whole === null || whole === 10}
          onClick={() => whole !== null && onChange(half ? whole : whole + 0.5)}
        >
          + ½
        </button>
      </div>
      <p class="scale-word" aria-live="polite">
        {value === null ? "0 is rest, 10 is the most you can imagine." : inWords(value)}
      </p>
    </fieldset>
  );
}

function inWords(value: number): string {
  const below = WORDS[Math.floor(value)];
  if (Number.isInteger(value) && below) return `${value}: ${below}`;
  const lower = nearest(value, -1);
  const upper = nearest(value, 1);
  return `${value}: between ${lower} and ${upper}`;
}

function nearest(value: number, direction: 1 | -1): string {
  let step = direction < 0 ? Math.floor(value) : Math.ceil(value);
  while (WORDS[step] === undefined) step += direction;
  return WORDS[step] ?? "";
}
