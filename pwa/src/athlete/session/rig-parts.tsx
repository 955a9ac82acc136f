/** What hangs on a bar beside its plates, and in which order a light bar is loaded: kept, but not in the first load. */
import "../look/rig.css";
import type { ComponentChildren } from "preact";

import type { SheetExercise } from "../../api/types";
import { ForceCurve } from "../../parts/force-curve";
import { LoadingOrder } from "../../parts/loading-order";
import type { Order } from "../../parts/order-words";
import { RigLines } from "../../parts/rig-lines";
import { useUnits } from "../hooks";
import { figure, mass, plateFigure, unit } from "../words/mass";
import { curveFor, heaviestKg, heldAt, isFresh } from "./rig-view";
import type { RiggingProps } from "./rigging";

export function RigParts({ view, exercise, set, load }: RiggingProps) {
  const units = useUnits();
  const { rig = [], loading, stripping, implement } = exercise;
  const fresh = isFresh(view, exercise);
  const curve = set && load && curveFor(exercise, set, load);
  const reading = { figure: (kg: number) => figure(kg, units), unit: unit(units) };
  const held = heldAt(exercise);
  return (
    <div class="rigging">
      {curve && (
        <ForceCurve
          curve={curve}
          lift={{ kind: implement.kind, ...(held !== null && { heldAt: held }) }}
          reading={reading}
        />
      )}
      {rig.length > 0 && (
        <Reveal title="Hang before loading" open={fresh}>
          <RigLines lines={rig} />
        </Reveal>
      )}
      {loading && (
        <Reveal title="Loading order" open={fresh}>
          <OrderPart exercise={exercise} order={loading} />
          {!set && <p>In the warm-up too: one plate a side, in turn.</p>}
        </Reveal>
      )}
      {stripping && (
        <Reveal title="Stripping order" open={false}>
          <OrderPart exercise={exercise} order={stripping} />
        </Reveal>
      )}
    </div>
  );
}

export function StripPart({ exercise }: { readonly exercise: SheetExercise }) {
  if (!exercise.stripping) return null;
  return (
    <section class="strip-first" aria-label="Strip first">
      <h2>Strip first: {exercise.implement.name}</h2>
      <OrderPart exercise={exercise} order={exercise.stripping} />
    </section>
  );
}

function OrderPart({ exercise, order }: { exercise: SheetExercise; order: Order }) {
  const units = useUnits();
  const { collars_kg = 0, sides } = exercise.implement;
  const kg = heaviestKg(exercise);
  const heaviest = kg === null ? "" : mass(kg, units);
  const words =
    order === exercise.loading
      ? `From the bare bar to ${heaviest}.`
      : `From ${heaviest} to the bare bar.`;
  return (
    <>
      {heaviest && <p class="small">{words}</p>}
      <LoadingOrder
        order={order}
        plate={(each) => plateFigure(each, units)}
        collarKg={sides ? collars_kg / sides : 0}
      />
    </>
  );
}

interface RevealProps {
  readonly title: string;
  readonly open: boolean;
  readonly children: ComponentChildren;
}

/** Open when the exercise begins, one tap away afterwards. */
function Reveal({ title, open, children }: RevealProps) {
  return (
    <details class="reveal" open={open}>
      <summary>{title}</summary>
      {children}
    </details>
  );
}
