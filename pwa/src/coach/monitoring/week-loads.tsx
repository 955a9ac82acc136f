import type { LoadSeen, LoadWeek } from "../answers";
import { figure } from "../block/wish-words";
import { tableAddress } from "../desk";
import { BarPlot } from "../plots/bar-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { Plotted } from "../plots/plotted";
import { counted } from "../shell/counted";
import { calendarDate, dayAndMonth } from "../shell/when";
import type { Asked } from "./monitoring-part";
import { monotonyInWords, strainInWords, tenths } from "./words";

const COLUMNS: readonly [Column<LoadWeek>, ...Column<LoadWeek>[]] = [
  { head: "Week of", cell: (week) => calendarDate(week.monday) },
  { head: "Load, au", cell: (week) => figure(week.load_au) },
  { head: "Day’s mean, au", cell: (week) => tenths(week.day_mean_au) },
  { head: "Deviation, au", cell: (week) => tenths(week.day_sd_au) },
  { head: "Monotony", cell: monotonyInWords },
  { head: "Strain, au", cell: strainInWords },
  { head: "Not rated", cell: (week) => figure(week.unrated_sessions) },
];

/** Load, monotony and strain of each week. */
export function WeekLoads({ seen, id, weeks }: Asked & { readonly seen: LoadSeen }) {
  const unrated = seen.weeks.reduce((sum, week) => sum + week.unrated_sessions, 0);
  const last = seen.weeks.findLast((week) => week.whole);
  return (
    <Plotted
      title="Load of each week"
      csv={tableAddress(id, "weeks", weeks)}
      table={
        <NumberTable
          caption="Load of each week"
          rows={seen.weeks.toReversed()}
          keyOf={(week) => week.monday}
          columns={COLUMNS}
        />
      }
    >
      <BarPlot
        label={`Load of each week in arbitrary units. ${last ? lastWeek(last) : ""}`}
        unit="au, by week from Monday"
        bars={seen.weeks.map((week) => ({
          key: week.monday,
          name: dayAndMonth(week.monday),
          parts: [week.load_au],
        }))}
      />
      {last && <p>{lastWeek(last)}</p>}
      {unrated > 0 && (
        <p class="aside-note">
          {counted(unrated, "session")} took place without a rating and{" "}
          {unrated === 1 ? "is" : "are"} not in the load.
        </p>
      )}
      <p class="aside-note">
        Monotony is the mean of the week’s seven days over their {unbroken(seen.sd)}; a week of
        equal days has none. Strain is the week’s load times its monotony.
      </p>
    </Plotted>
  );
}

function lastWeek(week: LoadWeek): string {
  const load = `${figure(week.load_au)} au`;
  const monotony = `monotony ${monotonyInWords(week)}`;
  return `Week of ${calendarDate(week.monday)}: ${load}, ${monotony}, strain ${strainInWords(week)}.`;
}

/** "(n - 1)" stays on one line. */
function unbroken(words: string): string {
  return words.replaceAll(" - ", "\u00a0−\u00a0");
}
