import { useApp } from "../app-context";
import { RestBar } from "./rest-bar";
import type { SessionView } from "./view";

/** Nothing is open any more: finish, or look over what was recorded. */
export function AllDone({ view }: { readonly view: SessionView }) {
  const { router } = useApp();
  const locked = view.exercises.filter((exercise) => exercise.locked);
  return (
    <>
      <main class="page">
        <p class="lead">That was the last set.</p>
        <p>Strip the bar, put the kit away, then say how it was.</p>
        {locked.map(({ key, name, locked: why }) => (
          <p key={key} class="note">
            {name} was left out. {why}
          </p>
        ))}
      </main>
      <section class="set-panel" aria-label="What next">
        <RestBar view={view} />
        <button type="button" class="button main record" onClick={() => router.go("/finish")}>
          Finish the session
        </button>
        <div class="panel-foot">
          <button type="button" class="button quiet" onClick={() => router.go("/sets")}>
            All sets
          </button>
        </div>
      </section>
    </>
  );
}
