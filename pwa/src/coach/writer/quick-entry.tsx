import { useState } from "preact/hooks";

import { setKeys } from "../block/exercises";
import { addLine } from "../block/lines";
import { withExercise } from "../block/places";
import { readShorthand } from "../block/shorthand";
import { lineInWords, restInWords } from "../block/wish-words";
import { TextField } from "../fields/text-field";
import type { ExerciseProps } from "./exercise-editor";
import { useWriter } from "./writer-state";

/** Equal sets typed in one line of shorthand, read back in words before they are taken. */
export function QuickEntry({ plan, at, session }: ExerciseProps) {
  const writer = useWriter();
  const [text, setText] = useState("");
  const usual = plan.sets.at(-1)?.load ?? { basis: "rir", rir: 3 };
  const read = text.trim() ? readShorthand(text, usual) : null;
  const take = (event: Event) => {
    event.preventDefault();
    if (!read || "what" in read) return;
    const sets = addLine(plan.sets, read.asks, read.count, setKeys(session), writer.random);
    const first = sets[plan.sets.length];
    if (first) writer.starts.value = new Set([...writer.starts.value, first.key]);
    const rest = read.rest ? { rest: read.rest } : {};
    writer.edit((block) => withExercise(block, at, (each) => ({ ...each, ...rest, sets })));
    setText("");
  };
  return (
    <form class="quick-entry" onSubmit={take}>
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

function readBack(read: Exclude<ReturnType<typeof readShorthand>, { what: string }>): string {
  const words = lineInWords(read.count, read.asks);
  return read.rest ? `${words}, ${restInWords(read.rest)}` : words;
}
