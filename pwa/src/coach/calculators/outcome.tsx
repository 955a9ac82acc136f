import { Refused, type Fault } from "../../api/client";
import type { Calculation, Calculator } from "../answers";
import { Failure, FaultList } from "../shell/states";
import { figureInWords } from "./figures";
import type { Worked } from "./use-calculation";

const MANY = 4;

interface OutcomeProps {
  readonly calculator: Calculator;
  readonly worked: Worked;
  readonly lacking: readonly string[];
  /** Refusals that no field shows. */
  readonly others: readonly Fault[];
}

/** The result, or why there is none yet; beside it on what it rests. */
export function Outcome({ calculator, worked, lacking, others }: OutcomeProps) {
  const { result, fault, stale } = worked;
  return (
    <section class={stale ? "stale" : ""} aria-label="Result">
      <p class="sr-only" role="status">
        {result && !stale ? inOneLine(result) : ""}
      </p>
      {lacking.length > 0 && <p class="aside-note">Still needed: {lacking.join("; ")}.</p>}
      {lacking.length === 0 && !result && !fault && <p class="waiting">Working it out …</p>}
      <NoResult fault={fault} others={others} />
      {result && <Figures result={result} />}
      <Basis of={calculator} doubt={result?.doubt ?? calculator.doubt} />
    </section>
  );
}

function NoResult({
  fault,
  others,
}: {
  readonly fault: unknown;
  readonly others: readonly Fault[];
}) {
  if (!(fault instanceof Refused) || fault.faults.length === 0) return <Failure fault={fault} />;
  return (
    <div class="failure" role="alert">
      <p>No result: {others.length > 0 ? "this has to be put right." : fieldsInWords(fault)}</p>
      <FaultList faults={others} />
    </div>
  );
}

function fieldsInWords({ faults }: Refused): string {
  return faults.length === 1 ? "see the field that is marked." : "see the fields that are marked.";
}

function Figures({ result: { result, notes } }: { readonly result: Calculation }) {
  return (
    <>
      <dl class="calculated">
        {result.map((one, place) => (
          <div key={`${one.name} ${one.unit}`} class={place === 0 ? "first" : ""}>
            <dt>{one.name}</dt>
            <dd>{figureInWords(one)}</dd>
          </div>
        ))}
      </dl>
      {notes.length > 0 && (
        <ul class="calculated-notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </>
  );
}

interface BasisProps {
  readonly of: Calculator;
  readonly doubt: string;
}

function Basis({ of: { formula, source, range }, doubt }: BasisProps) {
  const parts = { Formula: formula, Source: source, "Where it holds": range, Doubt: doubt };
  return (
    <dl class="basis">
      {Object.entries(parts).map(([name, text]) => (
        <div key={name}>
          <dt>{name}</dt>
          {linesOf(text).map((line) => (
            <dd key={line}>{line}</dd>
          ))}
        </div>
      ))}
    </dl>
  );
}

/** A list of equations, say, line by line; what is a sentence or two stays together. */
function linesOf(text: string): readonly string[] {
  const lines = text.split("; ");
  return lines.length >= MANY ? lines : [text];
}

function inOneLine({ result: [first, ...others] }: Calculation): string {
  if (!first) return "";
  const more = others.length > 0 ? `, and ${others.length} more` : "";
  return `${first.name}: ${figureInWords(first)}${more}`;
}
