import type { LoadSheet, SheetExercise } from "../../api/types";
import type { SessionRecord, SetRecord } from "../../offline/fold";
import { exercisesOf } from "../../offline/plan";
import { newsOf, usePhoneState, useUnits } from "../hooks";
import { doneInWords } from "../words/sets";
import { moment } from "../words/times";

interface Props {
  readonly record: SessionRecord;
  readonly now: number;
}

/** One session that was done, folded up to a line. */
export function DonePart({ record, now }: Props) {
  const state = usePhoneState();
  const units = useUnits();
  const pinned = state.pins.find(({ session }) => session === record.session)?.sheet;
  const sheet = pinned ?? newsOf(state, "sheet").find((each) => each.session === record.session);
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
      {partsOf(sheet, record).map(({ name, exercise, sets }) => (
        <div key={name} class="done-exercise">
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

interface Part {
  readonly name: string;
  readonly exercise: SheetExercise | undefined;
  readonly sets: readonly SetRecord[];
}

/** By exercise, in the order of the sheet; what the sheet no longer knows stands at the end. */
function partsOf(sheet: LoadSheet | undefined, record: SessionRecord): Part[] {
  const left = new Map(record.sets);
  const exercises = sheet ? exercisesOf(sheet, record) : [];
  const parts = exercises.flatMap((exercise): Part[] => {
    const sets = exercise.sets.flatMap(({ key }) => {
      const found = left.get(key);
      left.delete(key);
      return found ? [found] : [];
    });
    return sets.length > 0 ? [{ name: exercise.name, exercise, sets }] : [];
  });
  return left.size > 0
    ? [...parts, { name: "Other sets", exercise: undefined, sets: [...left.values()] }]
    : parts;
}
