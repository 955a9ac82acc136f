import { useState } from "preact/hooks";

import type { SpeedSession, SpeedSet } from "../answers";
import { figure, kilos } from "../block/wish-words";
import { tableAddress } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { BarPlot } from "../plots/bar-plot";
import { Legend } from "../plots/legend";
import { NumberTable, type Column } from "../plots/number-table";
import { Plotted } from "../plots/plotted";
import { calendarDate } from "../shell/when";
import type { SpeedSeen } from "./speed-section";
import { courseInWords, isBest, isMeasured, orDash, perSecond, watts } from "./speed-words";

/** One session's speed sets, one after the other. */
export function SpeedSets({ exercise, id, weeks }: SpeedSeen) {
  const newestFirst = exercise.sessions.toReversed();
  const [chosen, setChosen] = useState(0);
  const session = newestFirst[chosen] ?? newestFirst[0];
  if (!session) return null;
  const measured = isMeasured(session);
  return (
    <Plotted
      title={`${exercise.name}, set by set`}
      csv={tableAddress(id, "speed", weeks)}
      table={
        <NumberTable
          caption={`${exercise.name} on ${calendarDate(session.on)}, set by set`}
          rows={session.sets}
          keyOf={(set) => `${set.number}`}
          columns={columnsFor(session)}
        />
      }
    >
      <ChoiceField
        label="Session"
        choices={Object.fromEntries(
          newestFirst.map((one, place) => [`${place}`, calendarDate(one.on)]),
        )}
        value={`${chosen}`}
        onValue={(value) => setChosen(Number(value))}
      />
      {measured ? <Power session={session} /> : <Quality session={session} />}
    </Plotted>
  );
}

function Power({ session }: { readonly session: SpeedSession }) {
  return (
    <>
      <Legend
        items={[
          { name: "mean of the set", look: "full" },
          { name: "best repetition", look: "peak" },
        ]}
      />
      <BarPlot
        label={`Power of each set in watts. ${courseInWords(session)}`}
        unit="W"
        across="set"
        bars={session.sets.map((set) => ({
          key: `${set.number}`,
          name: `${set.number}`,
          parts: [Math.round(set.mean_power_w ?? 0)],
          ...(set.peak_power_w === null ? {} : { peak: set.peak_power_w }),
          ...(isBest(session, set) ? { word: "best" } : {}),
        }))}
      />
      <p>{courseInWords(session)}</p>
      <p class="aside-note">
        Mean resistance over the range times mean velocity; the body that goes up with the bar is
        not counted. In common practice the best set is the fourth or fifth, and by the eighth it
        has gone.
      </p>
    </>
  );
}

function Quality({ session }: { readonly session: SpeedSession }) {
  if (session.sets.every((set) => set.quality === null)) {
    return <p class="lead">Neither velocity nor quality was told for these sets.</p>;
  }
  return (
    <>
      <BarPlot
        label="Quality of each set, from 1 to 5"
        unit="quality, 1–5"
        across="set"
        values={[0, 1, 2, 3, 4, 5]}
        bars={session.sets.map((set) => ({
          key: `${set.number}`,
          name: `${set.number}`,
          parts: [set.quality ?? 0],
        }))}
      />
      <p class="aside-note">
        No velocity was measured; the athlete’s rating stands in its place and is never turned into
        metres a second.
      </p>
    </>
  );
}

function columnsFor(session: SpeedSession): [Column<SpeedSet>, ...Column<SpeedSet>[]] {
  return [
    {
      head: "Set",
      cell: (set) => `${set.number}${isBest(session, set) ? ", best" : ""}`,
    },
    { head: "Load, kg", cell: (set) => orDash(set.load_kg, kilos) },
    { head: "Mean resistance, kg", cell: (set) => orDash(set.mean_resistance_kg, kilos) },
    { head: "Repetitions", cell: (set) => orDash(set.reps, figure) },
    { head: "Mean velocity, m/s", cell: (set) => orDash(set.mean_velocity_m_s, perSecond) },
    { head: "Fastest, m/s", cell: (set) => orDash(set.fastest_velocity_m_s, perSecond) },
    { head: "Mean power, W", cell: (set) => orDash(set.mean_power_w, watts) },
    { head: "Peak power, W", cell: (set) => orDash(set.peak_power_w, watts) },
    { head: "Quality of 5", cell: (set) => orDash(set.quality, figure) },
  ];
}
