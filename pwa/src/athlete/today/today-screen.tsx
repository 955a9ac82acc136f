import { useApp } from "../app-context";
import { useInView } from "../device/view-time";
import { usePhoneState, useUnderWay } from "../hooks";
import { useMore, Wraps } from "../later";
import { Disclaimer } from "../stop/stop-screen";
import { SyncSign } from "../sync/sync-sign";
import {
  clockInWords,
  exchangeInWords,
  isOverdue,
  sinceOf,
  syncInWords,
  unsentInWords,
  unsentOf,
} from "../sync/sync-words";
import { TopBar } from "../top-bar";
import { moment } from "../words/times";
import { InstallSlot } from "./install-slot";
import { Messages } from "./messages";
import { planOf } from "./plan";
import { NextSessions, SessionCard } from "./session-card";
import { UnderWayCard } from "./under-way-card";

export function TodayScreen() {
  const { router, sessions } = useApp();
  const state = usePhoneState();
  const now = useInView();
  const session = useUnderWay()?.session ?? null;
  const { revision, isNew, open } = planOf(state, session?.record ?? null, now);
  const due = session ? undefined : open[0];
  const later = session ? open : open.slice(1);
  const idle = !session && !due;
  const { more } = useMore(idle || sessions.value.length > 0);
  return (
    <div class="screen">
      <TopBar title="Today" />
      <main class="page today">
        <Notices now={now} session={session !== null} />
        <Wraps part="OcclusionNews" />
        {more && <more.JustDone now={now} />}
        {session && <UnderWayCard session={session} />}
        {due && <SessionCard sheet={due} revision={isNew ? revision : null} now={now} />}
        {idle && more && <more.NothingYet state={state} planned={revision !== null} />}
        <Messages state={state} now={now} />
        <InstallSlot />
        {later.length > 0 && <NextSessions sheets={later} now={now} canStart={!session} />}
        <nav class="row" aria-label="More">
          <button type="button" class="button" onClick={() => router.go("/tell")}>
            Tell your coach
          </button>
          <button type="button" class="button" onClick={() => router.go("/back")}>
            Look back
          </button>
          <button type="button" class="button" onClick={() => router.go("/kit")}>
            Kit
          </button>
          <button type="button" class="button" onClick={() => router.go("/sync")}>
            This phone
          </button>
          <Wraps part="ScreeningLink" />
        </nav>
        <SyncLine now={now} />
        <Disclaimer />
      </main>
    </div>
  );
}

function SyncLine({ now }: { readonly now: number }) {
  const { router } = useApp();
  const state = usePhoneState();
  const sync = syncInWords(state, now);
  const exchange = exchangeInWords(state);
  return (
    <>
      <button type="button" class="sync-line" onClick={() => router.go("/sync")}>
        <SyncSign mood={sync.mood} />
        <span>{sync.long}</span>
      </button>
      {exchange && <p class="facts">{exchange}</p>}
    </>
  );
}

interface NoticesProps {
  readonly now: number;
  readonly session: boolean;
}

/** What stands in the way, before anything else. */
function Notices({ now, session }: NoticesProps) {
  const { phone, router, update } = useApp();
  const state = usePhoneState();
  const clock = clockInWords(state);
  const sync = syncInWords(state, now);
  const unsent = unsentOf(state);
  return (
    <>
      {sync.mood === "trouble" && (
        <div class="notice" role="alert">
          <p>{sync.long}</p>
          {state.identity?.refused ? (
            <button type="button" class="button" onClick={() => router.go("/pair")}>
              Pair again
            </button>
          ) : (
            <button type="button" class="button" onClick={() => void phone.retry()}>
              Try again
            </button>
          )}
        </div>
      )}
      {clock && <p class="notice">{clock}</p>}
      {isOverdue(unsent, now) && (
        <div class="notice">
          <p>
            {unsentInWords(unsent)} unsent since {moment(sinceOf(unsent), now)}. Find a network, or
            hand them over by file.
          </p>
          <button type="button" class="button" onClick={() => router.go("/sync")}>
            Hand over by file
          </button>
        </div>
      )}
      {update.waiting.value && session && (
        <p class="hint">A newer version of the app waits until this session is over.</p>
      )}
      {update.waiting.value && !session && (
        <div class="notice">
          <p>A newer version of the app is ready.</p>
          <button type="button" class="button" onClick={update.useNow}>
            Use it now
          </button>
        </div>
      )}
    </>
  );
}
