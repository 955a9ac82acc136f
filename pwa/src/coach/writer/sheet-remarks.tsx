import type { SheetExercise } from "../../api/types";
import type { Order } from "../../parts/order-words";
import { within } from "../block/faults";
import { pathOf } from "../block/places";
import type { ExerciseProps } from "./exercise-editor";
import { marginInWords, orderInWords } from "./handling";
import { OcclusionRemark } from "./occlusion-remark";
import { rampInWords, sheetExercise } from "./outcome";
import { useRemarks } from "./writer-state";

/** What the load sheet says of the exercise as a whole: warm-up, rig, order of loading, what to mind. */
export function SheetRemarks({ plan, at, session }: ExerciseProps) {
  const { sheets, findings } = useRemarks();
  const sheet = sheetExercise(sheets, session.key, plan.key);
  if (!sheet) return null;
  const found = new Set(within(findings, pathOf(at)).map(({ what }) => bare(what)));
  const notes = (sheet.notes ?? []).filter((note) => !found.has(bare(note)));
  const ramp = rampInWords(sheet);
  const cautions = [...(sheet.locked ? [sheet.locked] : []), ...(sheet.cautions ?? [])];
  return (
    <ul class="sheet-remarks">
      {ramp && <li>Warm-up: {ramp}.</li>}
      {sheet.rig?.map((line) => (
        <li key={line} class="rigged">
          <b>Rig:</b> {line}
        </li>
      ))}
      <OcclusionRemark sheet={sheet} />
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
      {sheet.loading && <Handling name="Loading alone" order={sheet.loading} sheet={sheet} />}
      {sheet.stripping && <Handling name="Stripping alone" order={sheet.stripping} sheet={sheet} />}
      {cautions.length > 0 && (
        <li class="caution">
          <b>Mind:</b> {cautions.join(" ")}
        </li>
      )}
    </ul>
  );
}

interface HandlingProps {
  readonly name: string;
  readonly order: Order;
  readonly sheet: SheetExercise;
}

function Handling({ name, order, sheet }: HandlingProps) {
  return (
    <li>
      <b>{name}:</b> {orderInWords(order, sheet.implement)}; {marginInWords(order)}.
      {order.advice && <span class="caution"> {order.advice}</span>}
    </li>
  );
}

/** What a check has found is not said a second time as a note of the load sheet. */
function bare(text: string): string {
  return text.toLowerCase().replace(/\.$/, "");
}
