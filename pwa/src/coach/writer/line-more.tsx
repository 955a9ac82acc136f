import type { LoadWish } from "../../api/types";
import { figure } from "../block/wish-words";
import { ChoiceField, TruthField } from "../fields/choice-field";
import { ExerciseField } from "../fields/exercise-field";
import { NumberField } from "../fields/number-field";
import type { LineDeeds } from "./lines";
import type { LineFieldsProps } from "./line-row";

interface LineMoreProps extends LineFieldsProps {
  readonly deeds: LineDeeds;
  readonly only: boolean;
  readonly count: number;
}

/** What a line says only now and then, and what can be done with it. */
export function LineMore({ asks, name, change, deeds, only, count }: LineMoreProps) {
  const said = saidInWords(
    asks.load,
    asks.load.basis === "rir" ? undefined : asks.rir,
    asks.to_failure,
  );
  return (
    <details class="line-more">
      <summary>
        {said || "more"}
        <span class="sr-only"> for {name}</span>
      </summary>
      <div class="bar">
        {asks.load.basis !== "rir" && (
          <NumberField
            label="Reps in reserve meant"
            width="w2"
            value={asks.rir}
            onValue={(rir) => change({ rir }, "rir")}
          />
        )}
        <TruthField
          label="On to failure"
          value={asks.to_failure ?? false}
          onValue={(on) => change({ to_failure: on || undefined }, "failure")}
        />
        <WishMore wish={asks.load} onWish={(load) => change({ load }, "load more")} />
      </div>
      <div class="bar">
        <button type="button" class="plain" onClick={deeds.copy}>
          Copy the line
        </button>
        <button type="button" class="plain" disabled={count === 1} onClick={deeds.split}>
          Split into single sets
        </button>
        <button type="button" class="plain" onClick={() => deeds.move(-1)}>
          Earlier
        </button>
        <button type="button" class="plain" onClick={() => deeds.move(1)}>
          Later
        </button>
        <button type="button" class="plain" disabled={only} onClick={deeds.remove}>
          Remove the line
        </button>
      </div>
    </details>
  );
}

const POINTS = {
  bar: "on the bar alone",
  start: "at the start of the lift",
  mean: "on the whole of the lift",
  lockout: "at lockout",
} as const;

const UNKNOWN = {
  refuse: "say so, send nothing",
  find: "find it, by reps in reserve",
} as const;

interface WishMoreProps {
  readonly wish: LoadWish;
  readonly onWish: (wish: LoadWish) => void;
}

function WishMore({ wish, onWish }: WishMoreProps) {
  if (wish.basis === "percent") return <OfMaximum wish={wish} onWish={onWish} />;
  if (wish.basis === "kg") {
    return (
      <TruthField
        label="in the hand (landmine, cable)"
        value={wish.in_hand ?? false}
        onValue={(on) => onWish({ ...wish, in_hand: on || undefined })}
      />
    );
  }
  if (wish.basis === "last") {
    return (
      <NumberField
        label="Where there is no last time"
        unit="kg"
        width="w4"
        step={2.5}
        value={wish.start_kg}
        onValue={(start_kg) => onWish({ ...wish, start_kg })}
      />
    );
  }
  return null;
}

interface OfMaximumProps {
  readonly wish: Extract<LoadWish, { basis: "percent" }>;
  readonly onWish: (wish: LoadWish) => void;
}

function OfMaximum({ wish, onWish }: OfMaximumProps) {
  return (
    <>
      <ExerciseField
        label="Of another lift’s maximum"
        width="w12"
        value={wish.of ?? ""}
        onValue={(of) => onWish({ ...wish, of })}
      />
      {wish.of && (
        <button
          type="button"
          class="plain"
          onClick={() => onWish({ ...wish, of: undefined, ratio: undefined })}
        >
          Its own maximum
        </button>
      )}
      {wish.of && (
        <NumberField
          label="times"
          width="w3"
          step={0.05}
          value={wish.ratio ?? 1}
          onValue={(ratio) => onWish({ ...wish, ratio })}
        />
      )}
      <ChoiceField
        label="Counted"
        choices={POINTS}
        value={wish.point ?? "bar"}
        onValue={(point) => onWish({ ...wish, point })}
      />
      <ChoiceField
        label="No maximum known"
        choices={UNKNOWN}
        value={wish.when_unknown ?? "refuse"}
        onValue={(when_unknown) => onWish({ ...wish, when_unknown })}
      />
    </>
  );
}

function saidInWords(
  wish: LoadWish,
  rir: number | undefined,
  toFailure: boolean | undefined,
): string {
  const parts = [
    rir === undefined ? "" : `${figure(rir)} RIR`,
    toFailure ? "to failure" : "",
    wish.basis === "percent" && wish.of ? `of ${wish.of}` : "",
    wish.basis === "percent" && wish.point && wish.point !== "bar" ? POINTS[wish.point] : "",
    wish.basis === "kg" && wish.in_hand ? "in the hand" : "",
  ];
  return parts.filter(Boolean).join(", ");
}
