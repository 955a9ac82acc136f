import { useArmed } from "../../device/armed";
import { count } from "../../words/sets";
import type { AtHand } from "../at-hand";
import { useRecorder } from "../recording";
import { type StopCall, stopInWords, whyStopped } from "./stop-rule";

interface Props {
  readonly here: AtHand;
  readonly call: StopCall;
  readonly onGoOn: () => void;
}

/** Says that speed has gone; the athlete decides. */
export function StopStrip({ here, call, onGoOn }: Props) {
  const { view, exercise } = here;
  const recorder = useRecorder(view.session);
  const armed = useArmed();
  const open = exercise.sets.filter(({ key }) => !view.session.record.sets.has(key));
  return (
    <div class="stop-strip" role="status">
      <p>
        <strong>Stop here.</strong> {stopInWords(call)}
      </p>
      <div class="pair">
        <button
          type="button"
          class="button main"
          disabled={!armed}
          onClick={() => recorder.skipAll(open, whyStopped(call))}
        >
          End: skip {count(open.length, "set")}
        </button>
        <button type="button" class="button tall" disabled={!armed} onClick={onGoOn}>
          Go on
        </button>
      </div>
    </div>
  );
}
