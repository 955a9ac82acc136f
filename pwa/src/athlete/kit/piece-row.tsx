import { useState } from "preact/hooks";

import { Stepper } from "../../parts/stepper";
import { usePhoneState, useUnits } from "../hooks";
import { mass } from "../words/mass";
import { MeasureBand } from "./measure-band";
import type { Piece } from "./pieces";
import { changeInWords, isOf, type Proposal } from "./proposals";
import { usePropose } from "./use-propose";
import { WeighBar } from "./weigh-bar";

interface Props {
  readonly piece: Piece;
  readonly proposals: readonly Proposal[];
}

/** One piece: what the app believes of it, and how to say that it is otherwise. */
export function PieceRow({ piece, proposals }: Props) {
  const { measuring = {} } = usePhoneState().settings;
  const begun = piece.list === "bands" && String(piece.name) in measuring;
  const [doing, setDoing] = useState<"measure" | null>(begun ? "measure" : null);
  const units = useUnits();
  const last = proposals.findLast((one) => isOf(one, piece));
  const waiting = last?.state === "waits" ? last : null;
  const done = () => setDoing(null);
  return (
    <details class="next" open={begun}>
      <summary>
        <span class="next-name">{piece.title}</span>
        <span class="next-when">{piece.facts}</span>
        {last && last.state !== "accepted" && (
          <span class="next-when">
            {waiting ? "You said" : "Your coach set aside"}:{" "}
            {changeInWords(last.change, (kg) => mass(kg, units))}
          </span>
        )}
      </summary>
      {waiting ? (
        <Waiting proposal={waiting} />
      ) : doing === "measure" ? (
        <Measuring piece={piece} onDone={done} />
      ) : (
        <Ways piece={piece} onMeasure={() => setDoing("measure")} />
      )}
    </details>
  );
}

function Waiting({ proposal }: { readonly proposal: Proposal }) {
  const { identity } = usePhoneState();
  const propose = usePropose();
  const { id, body } = proposal.entry;
  return (
    <>
      <p>Until {identity?.coach ?? "your coach"} agrees, loads are worked out as before.</p>
      <button
        type="button"
        class="button"
        onClick={() => propose(body.item, { kind: "withdrawn" }, id)}
      >
        Take it back
      </button>
    </>
  );
}

function Measuring({ piece, onDone }: { readonly piece: Piece; readonly onDone: () => void }) {
  if (piece.list === "bars") {
    return <WeighBar piece={piece} bar={piece.row as { mass_kg: number }} onDone={onDone} />;
  }
  const band = piece.row as { rest_length_m: number };
  return <MeasureBand piece={piece} band={band} onDone={onDone} />;
}

const MEASURES: Readonly<Record<string, string>> = {
  bars: "Weigh it",
  bands: "Measure it with a hanging scale",
};

function Ways({ piece, onMeasure }: { readonly piece: Piece; readonly onMeasure: () => void }) {
  const propose = usePropose();
  const { list, name, title, row, count } = piece;
  if (count !== null) return <CountedWays piece={piece} most={count} />;
  const measure = MEASURES[list];
  return (
    <div class="row">
      {measure && (
        <button type="button" class="button" onClick={onMeasure}>
          {measure}
        </button>
      )}
      <button
        type="button"
        class="button"
        onClick={() => propose(title, { kind: "gone", list, name, row })}
      >
        It is gone
      </button>
    </div>
  );
}

const MOST_BACK = 20;

function CountedWays({ piece, most }: { readonly piece: Piece; readonly most: number }) {
  const propose = usePropose();
  const [many, setMany] = useState(Math.min(2, Math.max(1, most)));
  const { list, name, title } = piece;
  const item = `${list === "plates" ? "Plate" : "Dumbbell"} of ${title}`;
  const say = (kind: "gone" | "back") => propose(item, { kind, list, name, count: many });
  return (
    <>
      <Stepper
        label="Pieces"
        value={String(many)}
        atLeast={many === 1}
        atMost={many === MOST_BACK}
        onStep={(step) => setMany(many + step)}
      />
      <div class="row">
        <button type="button" class="button" disabled={many > most} onClick={() => say("gone")}>
          {many === 1 ? "It is gone" : "They are gone"}
        </button>
        <button type="button" class="button" onClick={() => say("back")}>
          {many === 1 ? "It is here again" : "They are here again"}
        </button>
      </div>
    </>
  );
}
