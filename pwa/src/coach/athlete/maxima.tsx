import type { Athlete, Maximum } from "../../api/types";
import type { MaximumNow } from "../answers";
import { figure } from "../block/wish-words";
import type { Column } from "../rows/columns";
import type { DocumentForm } from "../rows/document-form";
import { RowsEditor } from "../rows/rows-editor";
import { useDesk } from "../shell/desk-state";
import { isoDay } from "../shell/when";

/** What the loads go by today, worked out from the maxima written here and the sets done since. */
export function MaximaNow({ maxima }: { readonly maxima: readonly MaximumNow[] }) {
  if (maxima.length === 0) {
    return (
      <p class="aside-note">
        No maximum is known. Sets asked for by reps in reserve find one; sets asked for by
        percentage need one first.
      </p>
    );
  }
  return (
    <table class="ruled figures">
      <caption>What loads go by today</caption>
      <thead>
        <tr>
          <th scope="col">Lift</th>
          <th scope="col" class="number">
            Maximum
          </th>
          <th scope="col" class="number">
            90 % band
          </th>
          <th scope="col">From</th>
        </tr>
      </thead>
      <tbody>
        {maxima.map((each) => (
          <tr key={each.lift}>
            <th scope="row">{each.name}</th>
            <td class="number">{figure(each.kg)} kg</td>
            <td class="number">
              {figure(each.low_kg)}–{figure(each.high_kg)} kg
            </td>
            <td>{each.source}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const KINDS = { tested: "tested single", guessed: "guess" } as const;

const COLUMNS: readonly Column<Maximum>[] = [
  { kind: "exercise", field: "lift", label: "Lift", width: "w20" },
  { kind: "number", field: "kg", label: "Maximum", unit: "kg", step: 2.5 },
  { kind: "choice", field: "kind", label: "Known by", choices: KINDS, usual: "tested" },
  { kind: "date", field: "on", label: "On" },
  { kind: "number", field: "doubt_percent", label: "Doubt (1 SD)", unit: "%" },
];

export function MaximaEditor({ form }: { readonly form: DocumentForm<Athlete> }) {
  const desk = useDesk();
  const blank = () => ({ kind: "tested", on: isoDay(desk.now()) }) as Maximum;
  return (
    <>
      <h3>Written down</h3>
      <p class="aside-note">
        Doubt may stay empty: a usual one is taken for a tested single, a larger one for a guess.
      </p>
      <RowsEditor<Maximum>
        list="maxima"
        one="maximum"
        rows={form.document.maxima ?? []}
        columns={COLUMNS}
        blank={blank}
        faults={form.faults}
        onRows={(maxima) => form.change({ maxima })}
      />
    </>
  );
}
