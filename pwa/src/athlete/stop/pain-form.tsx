import { useMemo, useState } from "preact/hooks";

import { draft, type Place } from "../../offline/entry";
import { useApp } from "../app-context";

const PLACES = [
  "shoulder",
  "elbow",
  "wrist or hand",
  "neck",
  "upper back",
  "lower back",
  "hip",
  "knee",
  "ankle or foot",
  "elsewhere",
];

const LEVELS = Array.from({ length: 10 }, (_, index) => index + 1);

/** Where and how much, for the coach: two taps, no typing. */
export function PainForm({ place }: { readonly place: Place }) {
  const { phone, clock } = useApp();
  const id = useMemo(() => phone.newId(), [phone]);
  const [where, setWhere] = useState<string | null>(null);
  const [level, setLevel] = useState<number | null>(null);
  const [saved, setSaved] = useState(false);
  if (saved) {
    return (
      <p class="note" role="status">
        Recorded: {where}, {level} of 10. Your coach is told when the phone has a network.
      </p>
    );
  }

  async function record(at: string | null, much: number | null): Promise<void> {
    setWhere(at);
    setLevel(much);
    if (at === null || much === null) return;
    const body = { where: at, level: much };
    if (await phone.record(draft(id, clock.now(), "pain.reported", body, place))) setSaved(true);
  }

  return (
    <>
      <fieldset class="choices">
        <legend>Where does it hurt?</legend>
        {PLACES.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={where === name}
            onClick={() => void record(name, level)}
          >
            {name}
          </button>
        ))}
      </fieldset>
      <fieldset class="scale">
        <legend>How much, from 1 to 10?</legend>
        <div class="scale-steps">
          {LEVELS.map((step) => (
            <button
              key={step}
              type="button"
              aria-pressed={level === step}
              onClick={() => void record(where, step)}
            >
              {step}
            </button>
          ))}
        </div>
      </fieldset>
    </>
  );
}
