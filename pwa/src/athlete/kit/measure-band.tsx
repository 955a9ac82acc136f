import { useState } from "preact/hooks";

import { BandPlot } from "./band-plot";
import { doubtOf, FEWEST, mostCm, type Reading, withReading, worthOf } from "./band-readings";
import { FineStepper } from "./fine-stepper";
import type { Piece } from "./pieces";
import { usePropose } from "./use-propose";

const LEAST_REST_CM = 10;
const MOST_REST_CM = 300;
const FIRST_STRETCH_CM = 20;
const MOST_TENTHS = 3000;
const MOST_READINGS = 20;

interface Props {
  readonly piece: Piece;
  readonly band: { readonly rest_length_m: number };
  readonly onDone: () => void;
}

/** Guided: the length at rest, five stretches, then reading after reading. */
export function MeasureBand({ piece, band, onDone }: Props) {
  const [restCm, setRestCm] = useState(() => Math.round(band.rest_length_m * 100));
  const [stretched, setStretched] = useState(false);
  if (!stretched) {
    return (
      <div class="stack">
        <p>
          Lay the band flat, without pull, and measure it from end to end. Then hang it up, and hook
          the scale into it.
        </p>
        <FineStepper
          label="Length at rest"
          unit="cm"
          per={1}
          value={restCm}
          least={LEAST_REST_CM}
          most={MOST_REST_CM}
          onValue={setRestCm}
        />
        <p>
          Stretch it five times to the longest length that you train with, at most {mostCm(restCm)}{" "}
          cm. A torn or brittle band is thrown away, not measured. Keep your face out of its line.
        </p>
        <button type="button" class="button main" onClick={() => setStretched(true)}>
          Stretched five times
        </button>
      </div>
    );
  }
  return <Readings piece={piece} restCm={restCm} onDone={onDone} />;
}

interface ReadingsProps {
  readonly piece: Piece;
  readonly restCm: number;
  readonly onDone: () => void;
}

function Readings({ piece, restCm, onDone }: ReadingsProps) {
  const propose = usePropose();
  const [readings, setReadings] = useState<readonly Reading[]>([]);
  const [cm, setCm] = useState(Math.min(restCm + FIRST_STRETCH_CM, mostCm(restCm)));
  const [tenths, setTenths] = useState(0);
  const longest = mostCm(restCm);
  const doubt = doubtOf(readings);
  const tell = () => {
    const told = readings.map((one) => ({ length_m: one.cm / 100, kg: one.tenths / 10 }));
    const rest = restCm / 100;
    const key = String(piece.name);
    propose(piece.title, { kind: "band-measured", key, rest_length_m: rest, readings: told });
    onDone();
  };
  return (
    <div class="stack">
      <p>
        Pull slowly, upwards from short to long. Read both, and add the reading.
        {cm === longest &&
          ` Further than ${longest} cm, two and a half times its rest, is too far.`}
      </p>
      <FineStepper
        label="Length now"
        unit="cm"
        per={1}
        value={cm}
        least={restCm + 1}
        most={longest}
        onValue={setCm}
      />
      <FineStepper
        label="The scale shows"
        unit="kg"
        per={10}
        value={tenths}
        least={0}
        most={MOST_TENTHS}
        onValue={setTenths}
      />
      <button
        type="button"
        class="button"
        disabled={readings.length >= MOST_READINGS}
        onClick={() => setReadings(withReading(readings, { cm, tenths }))}
      >
        Add this reading
      </button>
      <BandPlot restCm={restCm} readings={readings} />
      <ul class="readings" aria-live="polite">
        {readings.map((one) => (
          <li key={one.cm}>
            {one.cm} cm: {(one.tenths / 10).toFixed(1)} kg
            <button
              type="button"
              class="button quiet"
              aria-label={`Take out the reading at ${one.cm} cm`}
              onClick={() => setReadings(readings.filter((other) => other !== one))}
            >
              Take out
            </button>
          </li>
        ))}
      </ul>
      <p aria-live="polite" class={doubt ? "notice" : "note"}>
        {doubt ?? worthOf(readings.length)}
      </p>
      <button
        type="button"
        class="button main"
        disabled={readings.length < FEWEST || doubt !== null}
        onClick={tell}
      >
        Tell your coach
      </button>
    </div>
  );
}
