import type { TrendPoint } from "../../offline/database";
import { fold, type SessionRecord } from "../../offline/fold";
import { isOver, placed } from "../../offline/ledger-view";
import { useApp } from "../app-context";
import { useInView } from "../device/view-time";
import { newsOf, usePhoneState } from "../hooks";
import { TopBar } from "../top-bar";
import { DonePart } from "./done-part";
import { Trend } from "./trend";

/** What was done, and where the maxima are going. */
export function BackScreen() {
  const { router } = useApp();
  const state = usePhoneState();
  const now = useInView();
  const done = fold(placed(state).map(({ entry }) => entry))
    .filter((record) => isOver(record) || record.sets.size > 0)
    .sort((one, other) => startOf(other).localeCompare(startOf(one)));
  const trackers = newsOf(state, "tracker");
  return (
    <div class="screen">
      <TopBar title="Look back" back="/" />
      <main class="page">
        {trackers.length > 0 && (
          <section aria-label="Maxima">
            <h2 class="section-title">Your maxima</h2>
            {trackers.map((tracker) => (
              <Trend
                key={tracker.lift}
                name={tracker.name}
                now={now}
                points={pointsOf(state.trend, tracker.lift)}
              />
            ))}
          </section>
        )}
        <section aria-label="Sessions done">
          <h2 class="section-title">Done</h2>
          {done.length === 0 && (
            <div class="card empty">
              <p>Nothing yet. What you record stands here, also without a network.</p>
              <button type="button" class="button" onClick={() => router.go("/")}>
                To Today
              </button>
            </div>
          )}
          {done.map((record) => (
            <DonePart key={`${record.revision} ${record.session}`} record={record} now={now} />
          ))}
        </section>
      </main>
    </div>
  );
}

/** Ids begin with their time, so they sort sessions by when they were begun. */
function startOf({ started, sets }: SessionRecord): string {
  return started[0]?.id ?? [...sets.values()][0]?.entry.id ?? "";
}

function pointsOf(trend: readonly TrendPoint[], lift: string): TrendPoint[] {
  return trend.filter((point) => point.lift === lift).sort((one, other) => one.at - other.at);
}
