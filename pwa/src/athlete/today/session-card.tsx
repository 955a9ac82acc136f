import { useEffect, useMemo } from "preact/hooks";

import { type RevisionNews, toMs } from "../../api/sync";
import type { LoadSheet } from "../../api/types";
import { draft } from "../../offline/entry";
import { revisionOf } from "../../offline/ledger-view";
import { type App, useApp } from "../app-context";
import { loadMore } from "../later";
import { count } from "../words/sets";
import { dayName, daysBetween, moment, noonOf, relativeDay } from "../words/times";

interface CardProps {
  readonly sheet: LoadSheet;
  readonly revision: RevisionNews | null;
  readonly now: number;
}

/** The session that is due: what it needs, how long it takes, what has changed, one large button. */
export function SessionCard({ sheet, revision, now }: CardProps) {
  const app = useApp();
  useEffect(() => opened(app, sheet), [sheet.session, sheet.revision, now]);
  return (
    <section class="card due" aria-label={`Due: ${sheet.name}`}>
      <p class="when">{whenInWords(sheet, now)}</p>
      <h2>{sheet.name}</h2>
      <p class="facts">
        {sheet.week_name} · about {sheet.minutes} min · {count(sheet.exercises.length, "exercise")}
      </p>
      {sheet.note && <p class="from-coach">{sheet.note}</p>}
      <Changes revision={revision} now={now} />
      <StartButton sheet={sheet} label="Start" main />
      <Outline sheet={sheet} open={!sheet.on || daysBetween(noonOf(sheet.on), now) >= 0} />
    </section>
  );
}

function opened(app: App, sheet: LoadSheet): void {
  loadMore().then(
    ({ tellOpened }) => tellOpened(app, sheet),
    () => undefined,
  );
}

/** "Today", "Due since Monday", "Planned for tomorrow". */
export function whenInWords({ on, day }: LoadSheet, now: number): string {
  if (!on) return dayName(day);
  const at = noonOf(on);
  const days = daysBetween(at, now);
  if (days === 0) return "Today";
  return days > 0 ? `Due since ${relativeDay(at, now)}` : `Planned for ${relativeDay(at, now)}`;
}

function Changes({ revision, now }: Omit<CardProps, "sheet">) {
  const changes = revision?.changes ?? [];
  if (!revision || changes.length === 0) return null;
  return (
    <details class="changes">
      <summary>
        {count(changes.length, "change")} from your coach, {moment(toMs(revision.sent_at), now)}
      </summary>
      <ul>
        {changes.map((change) => (
          <li key={change}>{change}</li>
        ))}
      </ul>
    </details>
  );
}

function Outline({ sheet, open }: { readonly sheet: LoadSheet; readonly open?: boolean }) {
  return (
    <div class="outline">
      <ol>
        {sheet.exercises.map(({ key, name, sets, locked }) => (
          <li key={key}>
            {name}, {count(sets.length, "set")}
            {locked && " (locked)"}
          </li>
        ))}
      </ol>
      {sheet.needs.length > 0 && (
        <details open={open}>
          <summary>Fetch first</summary>
          <ul class="needs">
            {sheet.needs.map((need) => (
              <li key={need}>{need}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

interface StartProps {
  readonly sheet: LoadSheet;
  readonly label: string;
  readonly main?: boolean;
}

function StartButton({ sheet, label, main = false }: StartProps) {
  const { phone, clock, router, alarm, focus } = useApp();
  const id = useMemo(() => phone.newId(), [phone, sheet.session]);

  async function start(): Promise<void> {
    alarm.ready();
    focus.value = { exercise: null, correcting: null };
    const place = { revision: revisionOf(sheet), session: sheet.session };
    await phone.record(draft(id, clock.now(), "session.started", {}, place), sheet);
    router.go("/set");
  }

  return (
    <button type="button" class={main ? "button main" : "button"} onClick={() => void start()}>
      {label}
    </button>
  );
}

interface NextProps {
  readonly sheets: readonly LoadSheet[];
  readonly now: number;
  readonly canStart: boolean;
}

export function NextSessions({ sheets, now, canStart }: NextProps) {
  const app = useApp();
  return (
    <section aria-label="Next sessions">
      <h2 class="section-title">After that</h2>
      {sheets.map((sheet) => (
        <details
          key={`${sheet.revision} ${sheet.session}`}
          class="next"
          onToggle={({ currentTarget }) => currentTarget.open && opened(app, sheet)}
        >
          <summary>
            <span class="next-name">{sheet.name}</span>
            <span class="next-when">
              {whenInWords(sheet, now)} · {sheet.minutes} min
            </span>
          </summary>
          <Outline sheet={sheet} />
          {canStart && <StartButton sheet={sheet} label="Do this one now" />}
        </details>
      ))}
    </section>
  );
}
