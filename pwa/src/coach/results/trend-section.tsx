import { useState } from "preact/hooks";

import type { AthletePage, Trend } from "../answers";
import { figure } from "../block/wish-words";
import { tableAddress, trend } from "../desk";
import { ChoiceField } from "../fields/choice-field";
import { Link } from "../shell/link";
import { athletePath } from "../shell/route";
import { Loaded } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { calendarDate } from "../shell/when";
import { TrendPlot } from "./trend-plot";

/** Where a lift's maximum goes, as a plot and as a table. */
export function TrendSection({ page }: { readonly page: AthletePage }) {
  const [chosen, setChosen] = useState<string | null>(null);
  const first = page.maxima[0];
  if (!first) {
    return (
      <section>
        <h2>The maximum</h2>
        <p class="aside-note">
          No maximum is known yet: it comes from a first session, or{" "}
          <Link to={athletePath(page.id, "person")}>write one down</Link>.
        </p>
      </section>
    );
  }
  const lift = chosen ?? first.lift;
  const choices = Object.fromEntries(page.maxima.map((each) => [each.lift, each.name]));
  return (
    <section>
      <h2>The maximum</h2>
      <ChoiceField label="Lift" choices={choices} value={lift} onValue={setChosen} />
      <LiftTrend athlete={page.id} lift={lift} />
    </section>
  );
}

function LiftTrend({ athlete, lift }: { readonly athlete: string; readonly lift: string }) {
  const load = useLoad(`trend ${athlete} ${lift}`, () => trend(athlete, lift));
  return (
    <Loaded load={load} what="the trend">
      {(value) =>
        value.points.length < 2 ? (
          <p class="aside-note">
            One point makes no line yet. It grows with each session reported.
          </p>
        ) : (
          <>
            <TrendPlot trend={value} />
            <p class="aside-note">
              Dots: the estimate as it stood after each session. Line and shaded band: what all
              sessions together say, with the 90 % band.
            </p>
            <TrendTable trend={value} />
            <p class="plot-ways">
              <a class="button" href={tableAddress(athlete, "maxima")} download>
                Maxima of all lifts as CSV
              </a>
            </p>
          </>
        )
      }
    </Loaded>
  );
}

const SOURCES: Readonly<Record<string, string>> = {
  guess: "a guess",
  test: "a tested single",
  sets: "sets done",
};

function TrendTable({ trend: { points, name } }: { readonly trend: Trend }) {
  return (
    <details>
      <summary>The same as a table</summary>
      <table class="ruled figures">
        <caption class="sr-only">Maximum of {name} over time</caption>
        <thead>
          <tr>
            <th scope="col">On</th>
            <th scope="col" class="number">
              At the time, kg
            </th>
            <th scope="col" class="number">
              Looking back, kg
            </th>
            <th scope="col" class="number">
              90 % band, kg
            </th>
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {points.toReversed().map((point) => (
            <tr key={point.on}>
              <th scope="row">{calendarDate(point.on)}</th>
              <td class="number" data-head="At the time, kg">
                {figure(point.kg)}
              </td>
              <td class="number" data-head="Looking back, kg">
                {figure(point.smooth_kg)}
              </td>
              <td class="number" data-head="90 % band, kg">
                {figure(point.low_smooth_kg)}–{figure(point.high_smooth_kg)}
              </td>
              <td data-head="From">{SOURCES[point.source] ?? point.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
