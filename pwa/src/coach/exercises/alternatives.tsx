import type { AthleteExercises } from "../answers";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { exercisePath } from "../shell/route";
import { canBeDone } from "./search";
import { hereWords } from "./words";

interface AlternativesProps {
  readonly keys: readonly string[];
  readonly of: AthleteExercises | null;
}

/** What trains much the same, with what the chosen athlete's kit lacks for it. */
export function Alternatives({ keys, of }: AlternativesProps) {
  const exercises = useDesk().exercises.value;
  if (keys.length === 0) return null;
  return (
    <>
      <h2>Instead</h2>
      <ul class="plain-list">
        {keys.map((key) => {
          const here = of?.exercises.find((one) => one.key === key);
          return (
            <li key={key}>
              <Link to={exercisePath(key)}>
                {exercises.find((one) => one.key === key)?.name ?? key}
              </Link>
              {here && !canBeDone(here) && <small>{hereWords(here)}</small>}
            </li>
          );
        })}
      </ul>
    </>
  );
}
