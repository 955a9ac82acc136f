import { useApp } from "../app-context";
import { isInstalled } from "../device/install";
import { useInView } from "../device/view-time";
import { usePhoneState, useUnits } from "../hooks";
import { InstallPart } from "../install/install-part";
import { Disclaimer } from "../stop/stop-screen";
import { TopBar } from "../top-bar";
import { count } from "../words/sets";
import { moment } from "../words/times";
import { ArchivePart } from "./archive-part";
import { FactsPart } from "./facts-part";
import { HandOverPart } from "./hand-over-part";
import { HeldPart } from "./held-part";
import { sinceOf, syncInWords, unsentInWords, unsentOf } from "./sync-words";
import { UnpairPart } from "./unpair-part";

/** What this phone holds, what the server has, and whose phone it is. */
export function SyncScreen() {
  const { phone } = useApp();
  const state = usePhoneState();
  const now = useInView();
  const sync = syncInWords(state, now);
  return (
    <div class="screen">
      <TopBar title="This phone" back="/" />
      <main class="page">
        <p class="lead">{sync.long}</p>
        <Figures now={now} />
        <button
          type="button"
          class="button main"
          disabled={state.sync.running}
          onClick={() => phone.poke("asked")}
        >
          {state.sync.running ? "Talking to the server" : "Send and fetch now"}
        </button>
        <FactsPart now={now} />
        <HandOverPart />
        <HeldPart />
        <ArchivePart />
        {!isInstalled(window) && <InstallPart />}
        <Choices />
        <UnpairPart />
        <Disclaimer />
      </main>
    </div>
  );
}

function Figures({ now }: { readonly now: number }) {
  const state = usePhoneState();
  const unsent = unsentOf(state);
  const others = state.entries.filter(
    ({ outbox, athlete }) => outbox && athlete !== state.identity?.athlete.id,
  );
  const { lastSentAt, lastAnswerAt } = state.notes;
  const rows: [string, string][] = [
    ["On this phone only", unsent.length === 0 ? "nothing" : unsentInWords(unsent)],
    ["Last sent", lastSentAt ? moment(lastSentAt, now) : "nothing yet"],
    ["Last answer", lastAnswerAt ? moment(lastAnswerAt, now) : "none yet"],
  ];
  if (unsent.length > 0) rows.splice(1, 0, ["Since", moment(sinceOf(unsent), now)]);
  if (others.length > 0) {
    const what = `${count(others.length, "entry", "entries")}, kept until that athlete pairs here`;
    rows.push(["Of another athlete", what]);
  }
  return (
    <dl class="figures">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function Choices() {
  const { phone } = useApp();
  const { settings } = usePhoneState();
  const units = useUnits();
  const sound = settings.sound ?? true;
  return (
    <fieldset class="choices">
      <legend>Show and sound</legend>
      <button
        type="button"
        aria-pressed={!units.pounds}
        onClick={() => void phone.saveSettings({ pounds: false })}
      >
        Kilograms
      </button>
      <button
        type="button"
        aria-pressed={units.pounds}
        onClick={() => void phone.saveSettings({ pounds: true })}
      >
        Pounds
      </button>
      <button
        type="button"
        aria-pressed={sound}
        onClick={() => void phone.saveSettings({ sound: !sound })}
      >
        {sound ? "Rest clock sounds" : "Rest clock is silent"}
      </button>
    </fieldset>
  );
}
