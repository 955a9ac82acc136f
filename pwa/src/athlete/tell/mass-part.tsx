import { useState } from "preact/hooks";

import { useUnits } from "../hooks";
import { kilograms, mass, unit } from "../words/mass";
import { useTelling } from "./telling";

const LEAST_KG = 20;
const MOST_KG = 400;

/** Body mass, typed as the scale shows it. */
export function MassPart() {
  const units = useUnits();
  const { today, last, tell } = useTelling("body_mass");
  const [typed, setTyped] = useState("");
  const [wrong, setWrong] = useState("");

  async function record(): Promise<void> {
    const kg = kilograms(Number(typed.trim().replace(",", ".")), units);
    if (typed.trim() === "" || !(kg >= LEAST_KG && kg <= MOST_KG)) {
      setWrong(`Write what the scale shows, ${mass(LEAST_KG, units)} to ${mass(MOST_KG, units)}.`);
      return;
    }
    setWrong("");
    if (await tell({ kg })) setTyped("");
  }

  return (
    <form
      class="stack"
      aria-labelledby="mass"
      onSubmit={(event) => {
        event.preventDefault();
        void record();
      }}
    >
      <h2 id="mass" class="section-title">
        Body mass
      </h2>
      <label class="field">
        <span>In {unit(units)}, as the scale shows it</span>
        <input
          inputMode="decimal"
          autocomplete="off"
          enterkeyhint="done"
          value={typed}
          aria-invalid={wrong !== ""}
          aria-describedby="mass-told"
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p id="mass-told" aria-live="polite">
        {wrong || told(today?.body.kg, last?.body.kg)}
      </p>
      <button type="submit" class="button">
        {today ? "Correct it" : "Record it"}
      </button>
    </form>
  );

  function told(now: number | undefined, before: number | undefined): string {
    if (now !== undefined) return `${mass(now, units)} recorded for today.`;
    return before === undefined ? "" : `Last time ${mass(before, units)}.`;
  }
}
