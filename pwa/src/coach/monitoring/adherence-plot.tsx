import type { WorkWeek } from "../answers";
import { figure } from "../block/wish-words";
import { tableAddress } from "../desk";
import { BarPlot } from "../plots/bar-plot";
import { Legend } from "../plots/legend";
import type { Look } from "../plots/looks";
import { NumberTable, type Column } from "../plots/number-table";
import { Plotted } from "../plots/plotted";
import { counted } from "../shell/counted";
import { calendarDate, dayAndMonth } from "../shell/when";
import type { WorkSeen } from "./work-sections";

const FATES = [
  ["done_sets", "done as planned", "full"],
  ["changed_sets", "changed", "hatched"],
  ["skipped_sets", "skipped", "hollow"],
  ["unknown_sets", "not heard of", "dotted"],
] as const;

const LOOKS: readonly Look[] = FATES.map(([, , look]) => look);

const COLUMNS: readonly [Column<WorkWeek>, ...Column<WorkWeek>[]] = [
  { head: "Week of", cell: (week) => calendarDate(week.monday) },
  { head: "Planned sets", cell: (week) => figure(week.adherence.planned_sets) },
  { head: "Done as planned", cell: (week) => figure(week.adherence.done_sets) },
  { head: "Changed", cell: (week) => figure(week.adherence.changed_sets) },
  { head: "Skipped", cell: (week) => figure(week.adherence.skipped_sets) },
  { head: "Not heard of", cell: (week) => figure(week.adherence.unknown_sets) },
];

/** What became of the planned sets whose day has come. */
export function AdherencePlot({ id, weeks, found }: WorkSeen) {
  const told = inWords(found);
  return (
    <Plotted
      title="Planned sets of each week"
      csv={tableAddress(id, "adherence", weeks)}
      table={
        <NumberTable
          caption="Planned sets of each week"
          rows={found.toReversed()}
          keyOf={(week) => week.monday}
          columns={COLUMNS}
        />
      }
    >
      <Legend items={FATES.map(([, name, look]) => ({ name, look }))} />
      <BarPlot
        label={`Planned sets of each week and what became of them. ${told}`}
        unit="sets, by week from Monday"
        looks={LOOKS}
        bars={found.map((week) => ({
          key: week.monday,
          name: dayAndMonth(week.monday),
          parts: FATES.map(([field]) => week.adherence[field]),
        }))}
      />
      <p>{told}</p>
      <p class="aside-note">
        Changed: with another load, other repetitions or another exercise. Not heard of: no phone
        was heard since that day, so it may have been done.
      </p>
    </Plotted>
  );
}

function inWords(found: readonly WorkWeek[]): string {
  const sum = (field: keyof WorkWeek["adherence"]) =>
    found.reduce((whole, week) => whole + week.adherence[field], 0);
  const some = FATES.filter(([field]) => sum(field) > 0);
  const fates = some.map(([field, name]) => `${sum(field)} ${name}`).join(", ");
  return fates ? `Of ${counted(sum("planned_sets"), "set")}: ${fates}.` : "No set was due yet.";
}
