import { useMemo } from "preact/hooks";

import { draft } from "../../offline/entry";
import { isOver, revisionOf, type Session } from "../../offline/ledger-view";
import { useApp } from "../app-context";
import { count } from "../words/sets";
import { daysBetween } from "../words/times";

/** The session that ended today, as a quiet full stop. */
export function JustDone({ now }: { readonly now: number }) {
  const { state, sessions } = useApp();
  const last = sessions.value.at(-1);
  if (!last || !isOver(last.record)) return null;
  const end = last.record.finished ?? last.record.stopped;
  if (!end || daysBetween(Date.parse(end.at), now) !== 0) return null;
  const waits = state.value.unsaved.some(
    ({ draft: unsaved }) => unsaved.session === last.sheet.session,
  );
  return (
    <section class="card done" aria-label="Done today">
      <p class="when">{last.record.finished ? "Done today" : "Stopped today"}</p>
      <h2>{last.sheet.name}</h2>
      <p class="facts">
        {inWords(last)} {waits ? "Not saved yet." : "Saved on this phone."}
      </p>
      {!last.record.finished && <GoOn session={last} />}
    </section>
  );
}

function inWords({ record }: Session): string {
  const sets = count([...record.sets.values()].length, "set");
  const { finished } = record;
  if (!finished) return `${sets} recorded.`;
  return `${sets}, ${finished.body.minutes} min, effort ${finished.body.rpe} of 10.`;
}

/** A stop by mistake must not cost the session. */
function GoOn({ session }: { readonly session: Session }) {
  const { phone, clock, router } = useApp();
  const id = useMemo(() => phone.newId(), [phone]);

  async function goOn(): Promise<void> {
    const place = { revision: revisionOf(session.sheet), session: session.sheet.session };
    await phone.record(draft(id, clock.now(), "session.started", {}, place));
    router.go("/set");
  }

  return (
    <button type="button" class="button quiet" onClick={() => void goOn()}>
      Stopped by mistake: carry on
    </button>
  );
}
