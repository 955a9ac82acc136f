import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";

import type { SheetExercise, SheetLoad } from "../../api/types";
import { handling } from "../../offline/stacks";
import { Dumbbells } from "../../parts/dumbbells";
import { PinStack } from "../../parts/pin-stack";
import { Sleeve } from "../../parts/sleeve";
import { WIDTH } from "../../parts/sleeve-layout";
import { Sign } from "../../parts/stepper";
import { useHeight } from "../device/height";
import { useKit, useUnits } from "../hooks";
import { headline, makeUp, picture, task } from "../words/loads";
import { plateFigure, type Units } from "../words/mass";
import type { Hanging } from "./view";

type Implement = SheetExercise["implement"];

interface Props {
  readonly implement: Implement;
  readonly load: SheetLoad | null;
  /** Null where nothing is to be done with the plates, as in a correction. */
  readonly hanging: Hanging | null;
  /** Steps to the next load that the kit can make; null where there is nothing to choose. */
  readonly onStep: ((steps: 1 | -1) => void) | null;
  /** What belongs to the load beside its plates. */
  readonly children?: ComponentChildren;
}

/** What to lift, to be read from two metres: the figure, the drawing, what to do. */
export function LoadCard({ implement, load, hanging, onStep, children }: Props) {
  const units = useUnits();
  if (!load) return <NoLoad implement={implement} onStep={onStep} />;
  const { before, figure, unit } = headline(implement, load, units);
  const todo = hanging && task(implement, load, hanging, units);
  return (
    <section class="load-card" aria-label="Load">
      <div class="load-head">
        {onStep && <LoadButton label="Lighter" onClick={() => onStep(-1)} />}
        <p class="load-figure" aria-live="polite">
          {before && (
            <span class={`load-unit ${before === "Pin at" ? "load-pin" : ""}`}>{before} </span>
          )}
          {figure}
          <span class="load-unit"> {unit}</span>
        </p>
        {onStep && <LoadButton label="Heavier" plus onClick={() => onStep(1)} />}
      </div>
      <Picture implement={implement} load={load} hanging={hanging} units={units} />
      {todo && <p class={todo.quiet ? "load-task quiet" : "load-task"}>{todo.text}</p>}
      {children}
    </section>
  );
}

interface ButtonProps {
  readonly label: string;
  readonly plus?: boolean;
  readonly onClick: () => void;
}

function LoadButton({ label, plus = false, onClick }: ButtonProps) {
  return (
    <button type="button" class="load-step" aria-label={label} onClick={onClick}>
      <Sign plus={plus} />
    </button>
  );
}

interface PictureProps {
  readonly implement: Implement;
  readonly load: SheetLoad;
  readonly hanging: Hanging | null;
  readonly units: Units;
}

function Picture(props: PictureProps) {
  const box = useRef<HTMLDivElement>(null);
  const height = useHeight(box, WIDTH);
  return (
    <div class="load-picture" ref={box}>
      <Drawing {...props} height={height} />
      <p class="load-makeup">{makeUp(props.implement, props.load, props.units)}</p>
    </div>
  );
}

function Drawing({ implement, load, hanging, units, height }: PictureProps & { height: number }) {
  const { thickness, stacks } = useKit();
  const name = picture(implement, load, units);
  const side = load.side ?? [];
  if (implement.sides) {
    const { on } = handling(hanging?.side ?? side, side);
    return (
      <Sleeve
        side={side}
        labels={side.map((kg) => plateFigure(kg, units))}
        lengthM={implement.sleeve_length_m ?? USUAL_SLEEVE_M}
        thickness={thickness}
        height={Math.min(Math.max(height, 110), TALLEST)}
        hanging={side.length - on.length}
        collar={Boolean(implement.collars_kg) && side.length > 0}
        name={name}
      />
    );
  }
  if (typeof load.pin_kg === "number") {
    const pins = stacks.get(implement.key ?? "") ?? [load.pin_kg];
    const labels = new Map(pins.map((kg) => [kg, plateFigure(kg, units)]));
    return <PinStack pins={pins} at={load.pin_kg} labels={labels} height={height} />;
  }
  if (typeof load.piece_kg === "number") {
    return (
      <Dumbbells pair={implement.kind === "dumbbells"} label={plateFigure(load.piece_kg, units)} />
    );
  }
  return null;
}

const USUAL_SLEEVE_M = 0.415;
const TALLEST = 230;

function NoLoad({ implement, onStep }: Pick<Props, "implement" | "onStep">) {
  return (
    <section class="load-card load-none" aria-label="Load">
      <p class="load-word">{implement.name}</p>
      <p class="load-makeup">
        {onStep ? "No load was worked out: find one by feel." : "Nothing to load."}
      </p>
      {onStep && (
        <button type="button" class="button" onClick={() => onStep(1)}>
          Choose a load
        </button>
      )}
    </section>
  );
}
