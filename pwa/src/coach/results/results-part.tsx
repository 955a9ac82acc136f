import { useState } from "preact/hooks";

import type { AthletePage, ResultSession } from "../answers";
import { results, squad } from "../desk";
import { counted } from "../shell/counted";
import { useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { BLOCKS, blockPath, sheetsPath } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { isoDay } from "../shell/when";
import { StageList } from "../squad/stage-marks";
import { effortInWords, STANDINGS, standingOf, whenInWords, type Standing } from "./result-words";
import { ExerciseResult } from "./exercise-result";
import { WornPart } from "./occlusion-part";
import { MessagesPart } from "./messages-part";
import { OutsidePart } from "./outside-part";
import { TrendSection } from "./trend-section";

/** What happened: planned against done, newest first, and where the maximum goes. */
export function ResultsPart({ page }: { readonly page: AthletePage }) {
  const load = useLoad(`results ${page.id}`, () => results(page.id));
  return (
    <>
      {page.block && <ComeSoFar page={page} block={page.block} />}
      <TrendSection page={page} />
      <Loaded load={load} what="the results">
        {({ sessions, outside, messages }) => (
          <>
            <MessagesPart messages={messages} />
            <OutsidePart outside={outside} />
            <section>
              <h2>Sessions</h2>
              {sessions.length === 0 ? (
                <NothingYet />
              ) : (
                <Sessions sessions={sessions} heardAt={lastHeard(page)} />
              )}
            </section>
          </>
        )}
      </Loaded>
    </>
  );
}

/** How far the newest revision has come. */
function ComeSoFar({
  page,
  block,
}: {
  readonly page: AthletePage;
  readonly block: NonNullable<AthletePage["block"]>;
}) {
  const now = useDesk().now();
  const load = useLoad("squad", squad);
  const line = load.now.state === "ready" && load.now.value.find((each) => each.id === page.id);
  return (
    <section>
      <p>
        Has {block.mine ? <Link to={blockPath(block.id)}>{block.name}</Link> : block.name}, revision{" "}
        {page.revision}. <Link to={sheetsPath(page.id)}>Sheets for paper</Link>
      </p>
      {line && <StageList states={line.states} now={now} />}
    </section>
  );
}

function NothingYet() {
  return (
    <p class="lead">
      Nothing was sent yet. <Link to={BLOCKS}>Blocks</Link> are sent from their own page.
    </p>
  );
}

/** When any of the athlete's phones was last heard. */
function lastHeard(page: AthletePage): string | null {
  const heard = page.devices.flatMap((device) => device.last_used_at ?? []);
  return heard.toSorted().at(-1) ?? null;
}

const AT_ONCE = 8;

interface SessionsProps {
  readonly sessions: readonly ResultSession[];
  readonly heardAt: string | null;
}

function Sessions({ sessions, heardAt }: SessionsProps) {
  const [shown, setShown] = useState(AT_ONCE);
  const today = isoDay(useDesk().now());
  const standings = sessions.map((session) => ({
    session,
    standing: standingOf(session, heardAt, today),
  }));
  const past = standings.filter(({ standing }) => standing !== "ahead");
  const ahead = sessions.length - past.length;
  const newest = past.findIndex(({ session }) => session.state !== "planned");
  return (
    <>
      {past.length === 0 && <p class="lead">Sent, and nothing reported from it yet.</p>}
      {past.slice(0, shown).map(({ session, standing }, place) => (
        <Session
          key={`${session.revision} ${session.session}`}
          session={session}
          standing={standing}
          open={place === newest}
        />
      ))}
      {past.length > shown && (
        <button type="button" onClick={() => setShown(shown + AT_ONCE)}>
          Show earlier ones
        </button>
      )}
      {ahead > 0 && <p class="soft">{counted(ahead, "session")} ahead.</p>}
    </>
  );
}

interface SessionProps {
  readonly session: ResultSession;
  readonly standing: Standing;
  readonly open: boolean;
}

function Session({ session, standing, open }: SessionProps) {
  const effort = effortInWords(session);
  return (
    <details class="session-result" open={open}>
      <summary>
        <b>{session.name}</b>
        <span>{whenInWords(session)}</span>
        <span class={standing === "finished" ? "soft" : undefined}>{STANDINGS[standing]}</span>
        {effort && <span class="soft">{effort}</span>}
        <small>revision {session.revision}</small>
      </summary>
      {standing === "silent" && (
        <p class="aside-note">
          The phone has not been heard from since that day. It may have been done.
        </p>
      )}
      {session.why_stopped && <p>Stopped: {session.why_stopped}</p>}
      {session.comment && <blockquote>{session.comment}</blockquote>}
      {session.exercises.map((exercise) => (
        <ExerciseResult key={exercise.key} exercise={exercise} />
      ))}
      <WornPart worn={session.worn} />
    </details>
  );
}
