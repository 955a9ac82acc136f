import type { WorkWeek } from "../answers";
import { figure } from "../block/wish-words";
import { occlusionGuide, tableAddress } from "../desk";
import { BarPlot } from "../plots/bar-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { Plotted } from "../plots/plotted";
import { useLoad } from "../shell/use-load";
import { calendarDate, dayAndMonth } from "../shell/when";
import { beyond, limbName, limbsOf, type LimbWeek } from "./limbs";
import { tenths } from "./words";
import type { WorkSeen } from "./work-sections";

const COLUMNS: readonly [Column<LimbWeek>, ...Column<LimbWeek>[]] = [
  { head: "Week of", cell: (row) => calendarDate(row.monday) },
  { head: "Limb", cell: limbName, words: true },
  { head: "Wear, min", cell: (row) => tenths(row.minutes) },
  { head: "Repetitions", cell: (row) => figure(row.reps) },
  { head: "Sessions", cell: (row) => figure(row.sessions) },
];

/** Minutes of wear and repetitions of each limb whose flow was restricted. */
export function LimbWear({ id, weeks, found }: WorkSeen) {
  const rows = found.flatMap((week) =>
    week.limbs.map((limb) => ({ monday: week.monday, ...limb })),
  );
  if (rows.length === 0) return null;
  const most = Math.max(1, ...rows.map((row) => row.minutes));
  return (
    <Plotted
      title="Occlusion work of each limb"
      csv={tableAddress(id, "occlusion", weeks)}
      table={
        <NumberTable
          caption="Occlusion work of each limb by week"
          rows={rows.toReversed()}
          keyOf={(row) => `${row.monday} ${limbName(row)}`}
          columns={COLUMNS}
        />
      }
    >
      <ul class="small-plots">
        {limbsOf(rows).map((name) => (
          <li key={name}>
            <h4>{name}</h4>
            <BarPlot
              label={`${name}: minutes of wear of each week`}
              unit="min of wear"
              height={110}
              most={most}
              bars={found.map((week) => bar(week, rows, name))}
            />
          </li>
        ))}
      </ul>
      <Limits rows={rows} />
      <p class="aside-note">
        Minutes between wrap on and wrap off. A wrap that was never told to be off counts up to the
        limit.
      </p>
    </Plotted>
  );
}

/** What nobody may go beyond, and where it was. */
function Limits({ rows }: { readonly rows: readonly LimbWeek[] }) {
  const load = useLoad("occlusion guide", occlusionGuide);
  if (load.now.state !== "ready") return null;
  const { days_a_week: days, wear_minutes: minutes } = load.now.value.limits;
  const over = beyond(rows, days);
  return (
    <p>
      At most {days} days a week, and a wrap stays on for {figure(minutes)} min at most; a
      clinician’s limits can be tighter.{" "}
      {over.length > 0 && (
        <b>
          More sessions than that:{" "}
          {over.map((row) => `${limbName(row)}, week of ${calendarDate(row.monday)}`).join("; ")}.
        </b>
      )}
    </p>
  );
}

function bar(week: WorkWeek, rows: readonly LimbWeek[], name: string) {
  const own = rows.find((row) => row.monday === week.monday && limbName(row) === name);
  return { key: week.monday, name: dayAndMonth(week.monday), parts: [own?.minutes ?? 0] };
}
