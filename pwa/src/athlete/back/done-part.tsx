import type { SessionRecord } from "../../offline/fold";
import { newsOf, usePhoneState, useUnits } from "../hooks";
import { doneInWords } from "../words/sets";
import { moment } from "../words/times";
import { partsOf, sheetOf } from "./parts";

interface Props {
  readonly record: SessionRecord;
  readonly now: number;
}

/** One session that was done, folded up to a line. */
export function DonePart({ record, now }: Props) {
  const state = usePhoneState();
  const units = useUnits();
  const pinned = state.pins.map(({ sheet }) => sheet);
  const sheet = sheetOf(record, [...pinned, ...newsOf(state, "sheet")]);
  const { finished, stopped } = record;
  const first = record.started[0] ?? [...record.sets.values()][0]?.entry;
  return (
    <details class="next">
      <summary>
        <span class="next-name">{sheet?.name ?? "A session"}</span>
        <span class="next-when">
          {first ? moment(Date.parse(first.at), now) : ""}
          {finished ? ` · ${finished.body.minutes} min, effort ${finished.body.rpe} of 10` : ""}
          {stopped && !finished ? ` · stopped: ${stopped.body.why}` : ""}
        </span>
      </summary>
      {partsOf(sheet, record).map(({ name, exercise, sets }, place) => (
        <div key={place} class="done-exercise">
          <h3>{name}</h3>
          <ol>
            {sets.map((set) => (
              <li key={set.entry.id}>{doneInWords(set, exercise, units)}</li>
            ))}
          </ol>
        </div>
      ))}
      {finished?.body.comment && <p class="from-coach">{finished.body.comment}</p>}
    </details>
  );
}
