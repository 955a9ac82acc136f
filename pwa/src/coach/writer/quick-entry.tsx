import { useEffect, useRef, useState } from "preact/hooks";

import { setKeys } from "../block/exercises";
import { addLine } from "../block/lines";
import { withExercise } from "../block/places";
import { readShorthand } from "../block/shorthand";
import { lineInWords, restInWords } from "../block/wish-words";
import { TextField } from "../fields/text-field";
import type { ExerciseProps } from "./exercise-editor";
import { useWriter } from "./writer-state";

/**
 * Equal sets typed in one line of shorthand, read back in words before they are taken.
 *
 * The first ones stand in place of those that an exercise just added begins with. Enter on an empty
 * line leads on to the next exercise, so that a session is typed from top to bottom.
 */
export function QuickEntry({ plan, at, session }: ExerciseProps) {
  const writer = useWriter();
  const [text, setText] = useState("");
  const usual = plan.sets.at(-1)?.load ?? { basis: "rir", rir: 3 };
  const read = text.trim() ? readShorthand(text, usual) : null;
  const form = useRef<HTMLFormElement>(null);
  const fresh = writer.fresh.value === plan.key;
  useEffect(() => {
    if (fresh) form.current?.querySelector("input")?.focus();
  }, [fresh]);
  const take = (event: Event) => {
    event.preventDefault();
    if (!read) return toNextExercise(form.current);
    if ("what" in read) return;
    const before = fresh ? [] : plan.sets;
    const sets = addLine(before, read.asks, read.count, setKeys(session), writer.random);
    const first = sets[before.length];
    if (first) writer.starts.value = new Set([...writer.starts.value, first.key]);
    const rest = read.rest ? { rest: read.rest } : {};
    writer.edit((block) => withExercise(block, at, (each) => ({ ...each, ...rest, sets })));
    writer.fresh.value = null;
    setText("");
  };
  return (
    <form class="quick-entry" onSubmit={take} ref={form}>
      <TextField
        label="Add sets"
        width="w12"
        hint="8x3 60% rest 75-90"
        value={text}
        onValue={setText}
      />
      <span class="read-back" role="status">
        {read && ("what" in read ? read.what : readBack(read))}
      </span>
      {read && !("what" in read) && <button type="submit">Add</button>}
    </form>
  );
}

function toNextExercise(from: HTMLElement | null): void {
  const session = from?.closest(".session-editor");
  session?.querySelector<HTMLInputElement>(".add-exercise input")?.focus();
}

function readBack(read: Exclude<ReturnType<typeof readShorthand>, { what: string }>): string {
  const words = lineInWords(read.count, read.asks);
  return read.rest ? `${words}, ${restInWords(read.rest)}` : words;
}
