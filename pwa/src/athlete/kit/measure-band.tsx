import { BandPlot } from "./band-plot";
import { doubtOf, FEWEST, mostCm, withReading, worthOf } from "./band-readings";
import { FineStepper } from "./fine-stepper";
import type { Piece } from "./pieces";
import { firstCm, useMeasuring } from "./use-measuring";
import { usePropose } from "./use-propose";

const LEAST_REST_CM = 10;
const MOST_REST_CM = 300;
const MOST_TENTHS = 3000;
const MOST_READINGS = 20;

interface Props {
  readonly piece: Piece;
  readonly band: { readonly rest_length_m: number };
  readonly onDone: () => void;
}

/** Guided: the length at rest, five stretches, then reading after reading. */
export function MeasureBand({ piece, band, onDone }: Props) {
  const measuring = useMeasuring(String(piece.name), Math.round(band.rest_length_m * 100));
  const { now, change, end } = measuring;
  const leave = () => {
    end();
    onDone();
  };
  return (
    <div class="stack">
      {now.stretched ? (
        <Readings piece={piece} now={now} change={change} onTold={leave} />
      ) : (
        <AtRest now={now} change={change} />
      )}
      <button type="button" class="button quiet" onClick={leave}>
        Throw these readings away
      </button>
    </div>
  );
}

type Under = Pick<ReturnType<typeof useMeasuring>, "now" | "change">;

function AtRest({ now, change }: Under) {
  const { restCm } = now;
  return (
    <>
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
        onValue={(to) => change({ restCm: to, cm: firstCm(to) })}
      />
      <p>
        Stretch it five times to the longest length that you train with, at most {mostCm(restCm)}{" "}
        cm. A torn or brittle band is thrown away, not measured. Keep your face out of its line.
      </p>
      <button type="button" class="button main" onClick={() => change({ stretched: true })}>
        Stretched five times
      </button>
    </>
  );
}

interface ReadingsProps extends Under {
  readonly piece: Piece;
  readonly onTold: () => void;
}

function Readings({ piece, now, change, onTold }: ReadingsProps) {
  const propose = usePropose();
  const { restCm, readings, cm, tenths } = now;
  const longest = mostCm(restCm);
  const doubt = doubtOf(readings);
  const tell = () => {
    const told = readings.map((one) => ({ length_m: one.cm / 100, kg: one.tenths / 10 }));
    const rest = restCm / 100;
    const key = String(piece.name);
    propose(piece.title, { kind: "band-measured", key, rest_length_m: rest, readings: told });
    onTold();
  };
  return (
    <>
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
        onValue={(to) => change({ cm: to })}
      />
      <FineStepper
        label="The scale shows"
        unit="kg"
        per={10}
        value={tenths}
        least={0}
        most={MOST_TENTHS}
        onValue={(to) => change({ tenths: to })}
      />
      <button
        type="button"
        class="button"
        disabled={readings.length >= MOST_READINGS}
        onClick={() => change({ readings: withReading(readings, { cm, tenths }) })}
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
              onClick={() => change({ readings: readings.filter((other) => other !== one) })}
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
    </>
  );
}
