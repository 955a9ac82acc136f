import { useState } from "preact/hooks";

import { useUnits } from "../hooks";
import { useTelling } from "../tell/telling";
import { kilograms, mass, unit } from "../words/mass";
import { FineStepper } from "./fine-stepper";
import type { Piece } from "./pieces";
import { usePropose } from "./use-propose";

const PER = 10;
const MOST = 4000;
const USUAL_KG = 75;
const POUNDS_PER_KG = 2.2;

interface Props {
  readonly piece: Piece;
  readonly bar: { readonly mass_kg: number };
  readonly onDone: () => void;
}

/** A bathroom scale, once with the bar in hand and once without. */
export function WeighBar({ piece, bar, onDone }: Props) {
  const units = useUnits();
  const propose = usePropose();
  const { last } = useTelling("body_mass");
  const shown = (kg: number) => Math.round(kg * (units.pounds ? POUNDS_PER_KG : 1) * PER);
  const body = last?.body.kg ?? USUAL_KG;
  const [without, setWithout] = useState(() => shown(body));
  const [together, setTogether] = useState(() => shown(body + bar.mass_kg));
  const difference = together - without;
  const kg = (value: number) => kilograms(value / PER, units);
  const record = () => {
    const readings = { with_kg: kg(together), without_kg: kg(without) };
    propose(piece.title, { kind: "bar-weighed", key: String(piece.name), ...readings });
    onDone();
  };
  return (
    <div class="stack">
      <p>
        Stand on a bathroom scale with the bar, then without it. Do both three times and take the
        middle one: such a scale can be half a kilogram off.
      </p>
      <FineStepper
        label="With the bar"
        unit={unit(units)}
        per={PER}
        value={together}
        least={1}
        most={MOST}
        onValue={setTogether}
      />
      <FineStepper
        label="Without it"
        unit={unit(units)}
        per={PER}
        value={without}
        least={0}
        most={MOST}
        onValue={setWithout}
      />
      <p aria-live="polite">
        {difference > 0
          ? `So the bar weighs ${(difference / PER).toFixed(1)} ${unit(units)}; until now ${mass(bar.mass_kg, units)}.`
          : "With the bar it has to be more than without."}
      </p>
      <button type="button" class="button main" disabled={difference <= 0} onClick={record}>
        Tell your coach
      </button>
    </div>
  );
}
