import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";

import type { SetPlan } from "../../api/types";
import { setKeys } from "../block/exercises";
import { linesOf, moveLine, removeLine, copyLine, type Line } from "../block/lines";
import { withExercise } from "../block/places";
import type { ExerciseProps } from "./exercise-editor";
import { LineRow } from "./line-row";
import { QuickEntry } from "./quick-entry";
import { useWriter } from "./writer-state";

/** The sets of an exercise, equal ones in one line, and the place to add more. */
export function Lines({ plan, at, session }: ExerciseProps) {
  const writer = useWriter();
  const lines = linesOf(plan.sets, writer.starts.value);
  useKeptStarts(lines);
  const frame = useRef<HTMLDivElement>(null);
  const change = (sets: SetPlan[], field = "") => {
    if (writer.fresh.peek() === plan.key) writer.fresh.value = null;
    writer.edit(
      (block) => withExercise(block, at, (each) => ({ ...each, sets })),
      field && `${plan.key} ${field}`,
    );
  };
  const remove = (line: Line, place: number) => {
    if (lines.length === 1) return;
    change(removeLine(plan.sets, line));
    focusLine(frame, Math.min(place, lines.length - 2));
  };
  const deeds = (line: Line, place: number): LineDeeds => ({
    change,
    taken: setKeys(session),
    move: (by) => change(moveLine(lines, place, by)),
    copy: () => change(copied(line)),
    remove: () => remove(line, place),
    split: () => {
      writer.starts.value = new Set([...writer.starts.value, ...line.sets.map((set) => set.key)]);
    },
  });
  const copied = (line: Line) => {
    const sets = copyLine(plan.sets, line, setKeys(session), writer.random);
    const first = sets[line.from + line.sets.length];
    if (first) writer.starts.value = new Set([...writer.starts.value, first.key]);
    return sets;
  };
  return (
    <div class="lines" ref={frame}>
      {lines.map((line, place) => (
        <LineRow
          key={line.asks.key}
          plan={plan}
          at={at}
          session={session}
          line={line}
          only={lines.length === 1}
          deeds={deeds(line, place)}
        />
      ))}
      <QuickEntry plan={plan} at={at} session={session} />
    </div>
  );
}

export interface LineDeeds {
  readonly change: (sets: SetPlan[], field?: string) => void;
  readonly taken: ReadonlySet<string>;
  readonly move: (by: -1 | 1) => void;
  readonly copy: () => void;
  readonly remove: () => void;
  readonly split: () => void;
}

/** Where a line was removed, the next one takes the focus, once it is drawn. */
function focusLine(frame: RefObject<HTMLDivElement | null>, place: number): void {
  requestAnimationFrame(() => {
    const line = frame.current?.querySelectorAll(".line")[place];
    line?.querySelector("input")?.focus();
  });
}

/** A line that was shown as one stays one, though while it is typed into it may ask what its neighbour asks. */
function useKeptStarts(lines: readonly Line[]): void {
  const writer = useWriter();
  const firsts = lines.map((line) => line.asks.key).join(" ");
  useEffect(() => {
    const fresh = firsts.split(" ").filter((key) => !writer.starts.peek().has(key));
    if (fresh.length > 0) writer.starts.value = new Set([...writer.starts.peek(), ...fresh]);
  }, [firsts]);
}
