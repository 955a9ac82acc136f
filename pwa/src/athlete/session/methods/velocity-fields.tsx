import { useState } from "preact/hooks";

import type { PanelProps } from "../result-panel";
import { filledTo, withVelocity } from "./velocities";

const STEPS = [-5, -1, 1, 5] as const;

/** The mean velocity of each rep: choose the rep, then step it. */
export function VelocityFields({ here, done, onChange }: PanelProps) {
  const velocities = done.velocities_m_s ?? [];
  const [chosen, setChosen] = useState(0);
  const reps = Math.max(done.reps ?? 0, velocities.length, 1);
  function choose(rep: number): void {
    setChosen(rep);
    onChange(filledTo(here, done, rep));
  }
  return (
    <>
      <div class="velocities" role="group" aria-label="Mean velocity of each rep, m/s">
        {Array.from({ length: reps }, (_, rep) => (
          <button
            key={rep}
            type="button"
            class="button"
            aria-pressed={rep === chosen}
            aria-label={`Rep ${rep + 1}: ${velocities[rep]?.toFixed(2) ?? "not yet"}`}
            onClick={() => choose(rep)}
          >
            <span class="small">rep {rep + 1}</span>
            <span class="velocity">{velocities[rep]?.toFixed(2) ?? "–"}</span>
          </button>
        ))}
      </div>
      <div class="velocity-steps" role="group" aria-label={`Rep ${chosen + 1}, m/s`}>
        {STEPS.map((step) => (
          <button
            key={step}
            type="button"
            class="button"
            aria-label={`${step > 0 ? "Faster" : "Slower"} by ${(Math.abs(step) / 100).toFixed(2)}`}
            onClick={() => onChange(withVelocity(filledTo(here, done, chosen), chosen, step))}
          >
            {step > 0 ? "+" : "−"}
            {(Math.abs(step) / 100).toFixed(2).slice(1)}
          </button>
        ))}
      </div>
    </>
  );
}
