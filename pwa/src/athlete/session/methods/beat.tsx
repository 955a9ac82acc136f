import { useEffect } from "preact/hooks";

import type { SetDone } from "../../../offline/entry";
import { SECOND_MS } from "../../../offline/clock";
import { elapsedMs, LONGEST_MS } from "../../../offline/clocks";
import { useApp } from "../../app-context";
import type { AtHand } from "../at-hand";
import { useRunning } from "./running";
import { beatAt, type Tempo } from "./tempo";

interface Props {
  readonly here: AtHand;
  readonly done: SetDone;
  readonly tempo: Tempo;
}

/** Off until it is asked for: a soft tick each second, a longer one where the movement turns. */
export function Beat({ here, done, tempo }: Props) {
  const { alarm } = useApp();
  const clock = useRunning(here);
  const elapsed = clock.since === null ? null : elapsedMs(clock.since, clock.now);
  const second = elapsed === null || elapsed > LONGEST_MS ? null : Math.floor(elapsed / SECOND_MS);
  const beat = second === null ? null : beatAt(tempo, second);
  useEffect(() => {
    if (beat) alarm.tick(beat.turns);
  }, [second]);
  if (!beat) {
    return (
      <button type="button" class="button tall" onClick={() => clock.start(done)}>
        Beat the tempo
      </button>
    );
  }
  return (
    <button type="button" class="button tall beat" onClick={() => clock.stand(done, [])}>
      <span class="beat-word">
        {beat.word} {beat.left}
      </span>
      <span class="small">rep {beat.rep}; tap to stop the beat</span>
    </button>
  );
}
