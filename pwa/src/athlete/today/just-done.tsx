import { useMemo } from "preact/hooks";

import { draft } from "../../offline/entry";
import { isOver, revisionOf, type Session, sessionsBegun } from "../../offline/ledger-view";
import type { PhoneState } from "../../offline/phone";
import { uuid7 } from "../../offline/uuid";
import { useApp } from "../app-context";
import { count } from "../words/sets";
import { daysBetween } from "../words/times";

/** The session that ended today, as a quiet full stop. */
export function JustDone({ state, now }: { readonly state: PhoneState; readonly now: number }) {
  const last = sessionsBegun(state).at(-1);
  if (!last || !isOver(last.record)) return null;
  const end = last.record.finished ?? last.record.stopped;
  if (!end || daysBetween(Date.parse(end.at), now) !== 0) return null;
  const waits = state.unsaved.some(({ draft: unsaved }) => unsaved.session === last.sheet.session);
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
  const id = useMemo(() => uuid7(clock.now()), [clock]);
  return (
    <button
      type="button"
      class="button quiet"
      onClick={() => {
        const place = { revision: revisionOf(session.sheet), session: session.sheet.session };
        void phone.record(draft(id, clock.now(), "session.started", {}, place));
        router.go("/set");
      }}
    >
      Stopped by mistake: carry on
    </button>
  );
}
