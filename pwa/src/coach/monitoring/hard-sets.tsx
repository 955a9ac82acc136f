import { figure } from "../block/wish-words";
import { tableAddress } from "../desk";
import { BarPlot } from "../plots/bar-plot";
import { NumberTable, type Column } from "../plots/number-table";
import { Plotted } from "../plots/plotted";
import { counted } from "../shell/counted";
import { dayAndMonth } from "../shell/when";
import { muscleName, musclesOf, setsOf, type MuscleWeeks } from "./muscles";
import type { WorkSeen } from "./work-sections";

/** Hard sets of each muscle, all to one scale. */
export function HardSets({ id, weeks, found }: WorkSeen) {
  const muscles = musclesOf(found);
  const untold = found.reduce((sum, week) => sum + week.untold_sets, 0);
  const most = Math.max(1, ...muscles.flatMap((one) => one.sets));
  const columns: [Column<MuscleWeeks>, ...Column<MuscleWeeks>[]] = [
    { head: "Muscle", cell: (one) => muscleName(one.muscle) },
    ...found.map((week, place) => ({
      head: dayAndMonth(week.monday),
      cell: (one: MuscleWeeks) => figure(one.sets[place] ?? 0),
    })),
  ];
  return (
    <Plotted
      title="Hard sets of each muscle"
      csv={tableAddress(id, "hard-sets", weeks)}
      table={
        <NumberTable
          caption="Hard sets of each muscle by week"
          rows={muscles}
          keyOf={(one) => one.muscle}
          columns={columns}
        />
      }
    >
      {muscles.length === 0 ? (
        <p class="lead">No set was told to be within four repetitions of failure.</p>
      ) : (
        <ul class="small-plots">
          {muscles.map((one) => (
            <li key={one.muscle}>
              <h4>{muscleName(one.muscle)}</h4>
              <BarPlot
                label={`${muscleName(one.muscle)}: hard sets of each week, ${setsOf(one)}`}
                unit="sets"
                height={110}
                most={most}
                bars={found.map((week, place) => ({
                  key: week.monday,
                  name: dayAndMonth(week.monday),
                  parts: [one.sets[place] ?? 0],
                }))}
              />
            </li>
          ))}
        </ul>
      )}
      {untold > 0 && (
        <p class="aside-note">
          {counted(untold, "set")} came without a word of what was left in reserve and{" "}
          {untold === 1 ? "is" : "are"} not counted.
        </p>
      )}
      <p class="aside-note">
        A set within four repetitions of failure counts whole for the muscles that move the load and
        half for those that help. Speed, holds and timed work are not counted here.
      </p>
    </Plotted>
  );
}
