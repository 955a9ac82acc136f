import type { CatalogueEntry, ForAthlete } from "../answers";
import { Link } from "../shell/link";
import { exercisePath } from "../shell/route";
import { canBeDone, type ByKey } from "./search";
import { hereWords, kitWords, muscleWords } from "./words";

interface ExerciseTableProps {
  readonly exercises: readonly CatalogueEntry[];
  readonly here: ByKey | null;
}

export function ExerciseTable({ exercises, here }: ExerciseTableProps) {
  return (
    <table class="ruled exercises">
      <caption class="sr-only">Exercises</caption>
      <thead>
        <tr>
          <th scope="col">Exercise</th>
          <th scope="col">Works</th>
          <th scope="col">Needs</th>
          {here && <th scope="col">In this kit</th>}
        </tr>
      </thead>
      <tbody>
        {exercises.map((one) => (
          <tr key={one.key}>
            <th scope="row">
              <Link to={exercisePath(one.key)}>{one.name}</Link>
              {one.own && <small>{one.archived ? "archived" : "your own"}</small>}
            </th>
            <td data-head="Works">
              {muscleWords(one.prime)}
              {one.helpers.length > 0 && <small>{muscleWords(one.helpers).toLowerCase()}</small>}
            </td>
            <td data-head="Needs">{kitWords(one)}</td>
            {here && <Here one={here.get(one.key) ?? null} />}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Here({ one }: { readonly one: ForAthlete | null }) {
  const look = one && !canBeDone(one) ? undefined : "soft";
  return (
    <td data-head="In this kit" class={look}>
      {one ? hereWords(one) : "not known"}
    </td>
  );
}
