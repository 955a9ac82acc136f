import { DAY_MS } from "../../offline/clock";
import type { Session } from "../../offline/ledger-view";
import { useApp } from "../app-context";
import { useInView } from "../device/view-time";
import { viewSession } from "../session/view";
import { moment } from "../words/times";

const LEFT_OPEN_MS = DAY_MS / 2;

/** A session that was begun and not finished. */
export function UnderWayCard({ session }: { readonly session: Session }) {
  const { router, focus } = useApp();
  const now = useInView();
  const view = viewSession(session, focus.value.exercise);
  const next = view.exercises.find(({ key }) => key === view.next?.exercise);
  const old = now - session.startedAt > LEFT_OPEN_MS;
  return (
    <section class="card due" aria-label={`Under way: ${session.sheet.name}`}>
      <p class="when">{old ? "Left open" : "Under way"}</p>
      <h2>{session.sheet.name}</h2>
      <p class="facts">
        Started {moment(session.startedAt, now)}. {next ? `Next: ${next.name}.` : "All sets done."}
      </p>
      <button type="button" class="button main" onClick={() => router.go("/set")}>
        Carry on
      </button>
      <button type="button" class="button" onClick={() => router.go("/finish")}>
        Finish it
      </button>
    </section>
  );
}
