import { useState } from "preact/hooks";

import { get, post } from "../../api/client";
import { handOver } from "../../offline/hand-over";
import { unpair } from "../../offline/pairing";
import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { HandOverButtons } from "./hand-over-part";
import { unsentInWords, unsentOf } from "./sync-words";

type Stage = "closed" | "asking" | "working" | "unanswered";

/** Unties this phone. What is unsent is tried to be sent, counted and warned of; never wiped silently. */
export function UnpairPart() {
  const { phone, router, clock } = useApp();
  const state = usePhoneState();
  const [stage, setStage] = useState<Stage>("closed");
  const [saved, setSaved] = useState("");
  const unsent = unsentOf(state);
  const file = stage === "closed" ? null : handOver(state, clock.now());
  const left = unsent.length > 0 || state.unsaved.length > 0;
  const { identity } = state;

  async function leave(evenUnanswered: boolean): Promise<void> {
    setStage("working");
    try {
      await unpair({ get, post });
    } catch {
      if (!evenUnanswered) return setStage("unanswered");
    }
    await phone.wipe();
    router.replace("/");
  }

  if (!identity) return null;
  if (stage === "closed") {
    return (
      <section aria-label="Pairing">
        <p>
          This phone is {identity.athlete.name}'s, with {identity.coach} as coach.
        </p>
        <div class="row">
          <button type="button" class="button quiet" onClick={() => router.go("/pair")}>
            Pair anew
          </button>
          <button
            type="button"
            class="button quiet"
            onClick={() => {
              phone.poke("asked");
              setStage("asking");
            }}
          >
            Unpair
          </button>
        </div>
      </section>
    );
  }
  return (
    <section class="notice" role="alertdialog" aria-label="Unpair this phone?">
      {left ? (
        <p>
          <strong>{unsentInWords(unsent)} on this phone only.</strong> Unpair now, and they are gone
          for good. Wait for a network first if you can, or hand them over by file.
        </p>
      ) : (
        <p>Everything is on the server. The program and your entries leave this phone.</p>
      )}
      {file && <HandOverButtons file={file} onDone={setSaved} />}
      <p aria-live="polite">{saved}</p>
      {stage === "unanswered" && <p>The server did not answer, so it still counts this phone.</p>}
      <button type="button" class="button main" onClick={() => setStage("closed")}>
        Stay paired
      </button>
      <button
        type="button"
        class="button quiet"
        disabled={stage === "working"}
        onClick={() => void leave(stage === "unanswered")}
      >
        {left ? `Unpair and lose ${unsentInWords(unsent)}` : leaveWords(stage)}
      </button>
    </section>
  );
}

function leaveWords(stage: Stage): string {
  return stage === "unanswered" ? "Clear this phone all the same" : "Unpair this phone";
}
