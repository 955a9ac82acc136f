import { useMemo, useState } from "preact/hooks";

import { DAY_MS } from "../../offline/clock";
import { type Draft, draft, type Place } from "../../offline/entry";
import { revisionOf } from "../../offline/ledger-view";
import { useApp } from "../app-context";
import { usePhoneState, useUnderWay } from "../hooks";
import { useMore } from "../later";
import { TopBar } from "../top-bar";
import { PainForm } from "./pain-form";

type Why = "pain" | "warning sign";

/** Pain or a warning sign: the second tap records it and says what to do. */
export function StopScreen() {
  const { phone, clock, router } = useApp();
  const found = useUnderWay();
  const id = useMemo(() => phone.newId(), [phone]);
  const [session] = useState(found?.session ?? null);
  const [why, setWhy] = useState<Why | null>(null);
  const [sign, setSign] = useState<string | null>(null);
  const wrapped = useLastWrap(clock.now());
  const { more } = useMore(wrapped !== null);
  const place = session
    ? { revision: revisionOf(session.sheet), session: session.sheet.session }
    : { revision: wrapped?.revision ?? null, session: wrapped?.session ?? null };

  function stop(reason: Why, key: string | null = null): void {
    setWhy(reason);
    setSign(key);
    if (session || (key && place.session)) {
      const body = { why: reason, ...(key && { signs: [key] }) };
      void phone.record(draft(id, clock.now(), "session.stopped", body, place));
    } else if (reason === "warning sign") {
      const text = "A warning sign, with no session under way.";
      void phone.record(draft(id, clock.now(), "message", { text }));
    }
  }

  const back = session && !why ? "/set" : "/";
  return (
    <div class="screen stop-screen">
      <TopBar title={why ? "Stopped" : "Stop"} back={back} stop={false} />
      <main class="page">
        {why === null &&
          (wrapped && more ? (
            <more.StopSigns
              onSign={(key) => stop("warning sign", key)}
              onPain={() => stop("pain")}
            />
          ) : (
            <Question onStop={stop} />
          ))}
        {why === "warning sign" &&
          (sign && more ? <more.SignAdvice sign={sign} /> : <WarningSign />)}
        {why === "pain" && <Pain place={place} />}
        {why === null ? (
          <button type="button" class="button quiet" onClick={() => router.go(back)}>
            {session ? "I am fine: back to the set" : "I am fine: back"}
          </button>
        ) : (
          <button type="button" class="button" onClick={() => router.replace("/")}>
            To Today
          </button>
        )}
      </main>
    </div>
  );
}

const LOOKED_BACK_MS = 4 * DAY_MS;

/** Where a wrap was last put on, as long as its signs may still come. */
function useLastWrap(now: number): Draft | null {
  const last = usePhoneState().entries.findLast(({ entry }) => entry.kind === "wrap.on")?.entry;
  return last && now - Date.parse(last.at) < LOOKED_BACK_MS ? last : null;
}

function Question({ onStop }: { readonly onStop: (why: Why) => void }) {
  return (
    <>
      <p class="lead">Put the weight down. Stand or sit safely.</p>
      <button type="button" class="button alarm" onClick={() => onStop("warning sign")}>
        A warning sign
        <span class="small">
          Chest pain, faintness, short of breath, numbness, a limb that changes colour or swells
        </span>
      </button>
      <button type="button" class="button main" onClick={() => onStop("pain")}>
        Something hurts
      </button>
    </>
  );
}

function WarningSign() {
  return (
    <div role="alert" class="advice-block">
      <p class="lead">Get medical help now.</p>
      <ol class="steps">
        <li>Anything tight comes off: belt, wraps, straps.</li>
        <li>Sit or lie down. Do not drive yourself.</li>
        <li>
          Chest pain, short of breath, fainting, trouble speaking, weakness on one side: call your
          emergency number (112 in Europe) at once.
        </li>
        <li>Numbness, a colour that stays, a swollen painful limb: urgent care today.</li>
      </ol>
      <p>No second try today. This is recorded; your coach is told when the phone has a network.</p>
      <Disclaimer />
    </div>
  );
}

function Pain({ place }: { readonly place: Place }) {
  return (
    <>
      <p class="lead">
        {place.session ? "The session has ended here." : "Leave it alone for today."}
      </p>
      <p>
        Do not test it with another set. If it is sharp, grows, swells or tingles, have it looked at
        by a clinician before you train it again.
      </p>
      <PainForm place={place} />
      <Disclaimer />
    </>
  );
}

export function Disclaimer() {
  return (
    <p class="small">
      Undercroft plans and records training. It is no medical device and gives no medical advice.
    </p>
  );
}
