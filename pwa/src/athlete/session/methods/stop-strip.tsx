import { useState } from "preact/hooks";

import { count } from "../../words/sets";
import type { AtHand } from "../at-hand";
import { useRecorder } from "../recording";
import { stopCall, stopInWords, whyStopped } from "./stop-rule";

/** Says when speed has gone; the athlete decides. */
export function StopStrip({ here }: { readonly here: AtHand }) {
  const { view, exercise } = here;
  const [going, setGoing] = useState(false);
  const recorder = useRecorder(view.session);
  const call = stopCall(exercise, view.answered);
  if (!call || going || here.answer) return null;
  const open = exercise.sets.filter(({ key }) => !view.session.record.sets.has(key));
  return (
    <div class="stop-strip" role="status">
      <p>
        <strong>Stop here.</strong> {stopInWords(call)}
      </p>
      <div class="pair">
        <button
          type="button"
          class="button tall"
          onClick={() => recorder.skipAll(open, whyStopped(call))}
        >
          End: skip {count(open.length, "set")}
        </button>
        <button type="button" class="button tall" onClick={() => setGoing(true)}>
          Go on
        </button>
      </div>
    </div>
  );
}
