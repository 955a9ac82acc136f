import { useMemo, useState } from "preact/hooks";

import { draft } from "../../offline/entry";
import { revisionOf, type Session } from "../../offline/ledger-view";
import { Stepper } from "../../parts/stepper";
import { useApp } from "../app-context";
import { useUnderWay } from "../hooks";
import { TellTests } from "../session/methods/tell-test";
import { viewSession } from "../session/view";
import { TopBar } from "../top-bar";
import { count } from "../words/sets";
import { sendable } from "../words/text";
import { minutesSince } from "../words/times";
import { RpeScale } from "./rpe-scale";

const MINUTES_STEP = 5;
const MOST_MINUTES = 1_440;

export function FinishScreen() {
  const found = useUnderWay();
  return (
    <div class="screen">
      <TopBar title="Finish" back={found ? "/set" : "/"} />
      {found ? (
        <FinishForm session={found.session} />
      ) : (
        <main class="page">
          <p class="lead">No session is under way.</p>
        </main>
      )}
    </div>
  );
}

function FinishForm({ session }: { readonly session: Session }) {
  const { phone, clock, router } = useApp();
  const id = useMemo(() => phone.newId(), [phone]);
  const [rpe, setRpe] = useState<number | null>(null);
  const [minutes, setMinutes] = useState(() =>
    minutesSince(session.steadyStart, phone.times().steady),
  );
  const [comment, setComment] = useState("");
  const view = viewSession(session, null);
  const open = view.open.filter(({ kind }) => kind === "set").length;

  async function finish(): Promise<void> {
    if (rpe === null) return;
    const text = sendable(comment);
    const body = { rpe, minutes, ...(text && { comment: text }) };
    const place = { revision: revisionOf(session.sheet), session: session.sheet.session };
    await phone.record(draft(id, clock.now(), "session.finished", body, place));
    router.replace("/");
  }

  return (
    <main class="page">
      <TellTests view={view} over />
      {open > 0 && <p class="note">{count(open, "set")} still open. They count as not done.</p>}
      <RpeScale value={rpe} onChange={setRpe} />
      <Stepper
        label="Minutes in all"
        value={String(minutes)}
        atLeast={minutes === 0}
        onStep={(steps) =>
          setMinutes(Math.min(MOST_MINUTES, Math.max(0, minutes + steps * MINUTES_STEP)))
        }
      />
      <label class="field">
        <span>A word for your coach, if you want</span>
        <textarea
          rows={3}
          maxLength={2000}
          value={comment}
          onInput={(event) => setComment(event.currentTarget.value)}
        />
      </label>
      <button
        type="button"
        class="button main"
        disabled={rpe === null}
        onClick={() => void finish()}
      >
        {rpe === null ? "First say how hard it was" : "Finish the session"}
      </button>
    </main>
  );
}
