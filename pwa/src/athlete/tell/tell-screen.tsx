import { PainForm } from "../stop/pain-form";
import { TopBar } from "../top-bar";
import { MassPart } from "./mass-part";
import { MessagePart } from "./message-part";
import { ReadyPart } from "./ready-part";

const NOWHERE = {};

/** What the coach should know outside of a session; each takes a tap or two. */
export function TellScreen() {
  return (
    <div class="screen">
      <TopBar title="Tell your coach" back="/" />
      <main class="page tell">
        <ReadyPart />
        <MassPart />
        <MessagePart />
        <section class="stack" aria-labelledby="hurts">
          <h2 id="hurts" class="section-title">
            Something hurts
          </h2>
          <p>
            Sharp, growing, swelling or tingling: have it looked at by a clinician before you train
            it again. For a warning sign tap Stop.
          </p>
          <PainForm place={NOWHERE} />
        </section>
      </main>
    </div>
  );
}
