import type { Done, OcclusionResult, ResultExercise, ResultSet } from "../answers";
import { OcclusionLines } from "./occlusion-part";
import { expectedIn } from "./occlusion-words";
import { differenceInWords, doneInWords, plannedInWords } from "./result-words";
import { setRows, type SetRow } from "./set-rows";

export function ExerciseResult({ exercise }: { readonly exercise: ResultExercise }) {
  const asked = exercise.occlusion;
  return (
    <>
      <table class="ruled figures set-results">
        <caption>
          {exercise.name}
          {exercise.done_instead && `, done instead: ${exercise.done_instead}`}
          {exercise.why_instead && ` (${exercise.why_instead})`}
        </caption>
        <thead>
          <tr>
            <th scope="col">Set</th>
            <th scope="col">Planned</th>
            <th scope="col">Done</th>
            <th scope="col">Difference</th>
            {asked && <th scope="col">Usual to failure</th>}
            <th scope="col">Mark</th>
          </tr>
        </thead>
        <tbody>
          {setRows(exercise.sets).map((row) => (
            <Row key={row.numbers} row={row} asked={asked} method={exercise.method} />
          ))}
        </tbody>
      </table>
      {asked && <OcclusionLines asked={asked} />}
      <Marks sets={exercise.sets} />
    </>
  );
}

interface RowProps {
  readonly row: SetRow;
  readonly asked: OcclusionResult | null;
  readonly method: string;
}

function Row({ row, asked, method }: RowProps) {
  const { planned, done, number } = row.set;
  return (
    <tr>
      <th scope="row">{row.numbers}</th>
      <td data-head="Planned">{plannedInWords(planned)}</td>
      {done ? (
        <>
          <td data-head="Done" class={done.kind === "skipped" ? "skipped" : "done"}>
            {doneInWords(done, method)}
            {row.set.instead && <span class="soft">, {row.set.instead}</span>}
          </td>
          <td data-head="Difference">
            {row.set.instead ? "" : differenceInWords(planned, done, method)}
          </td>
        </>
      ) : (
        <>
          <td data-head="Done" class="soft">
            nothing reported
          </td>
          <td data-head="Difference">—</td>
        </>
      )}
      {asked && <td data-head="Usual to failure">{expectedIn(asked, number, row.last)}</td>}
      <td data-head="Mark">{marksOf(done).join(", ")}</td>
    </tr>
  );
}

function marksOf(done: Done | null): string[] {
  return [done?.two_answers ? "two answers" : "", done?.wild ? "out of line" : ""].filter(Boolean);
}

/** What the marks mean, where there are any. */
function Marks({ sets }: { readonly sets: readonly ResultSet[] }) {
  const two = sets.some((set) => set.done?.two_answers);
  const wild = sets.some((set) => set.done?.wild);
  if (!two && !wild) return null;
  return (
    <p class="aside-note">
      {two && "Two answers: two phones reported this set; the later answer is shown. "}
      {wild && "Out of line: far from what the maximum lets expect; it weighs less in the trend."}
    </p>
  );
}
