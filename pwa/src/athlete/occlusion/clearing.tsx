import { useTop } from "../device/top";
import { countdown } from "../../offline/clocks";
import { steadyOf } from "../../offline/ledger-view";
import { lastOff } from "../../offline/occlusion/wear";
import { useArmed } from "../device/armed";
import { minutesSeconds } from "../words/times";
import { type OcclusionKnown, useTell } from "./known";

interface Props {
  readonly known: OcclusionKnown;
  /** On the steady clock. */
  readonly now: number;
}

/** The wrap came off early because the limb went numb: does that clear within a minute? */
export function Clearing({ known, now }: Props) {
  const tell = useTell();
  useTop();
  const armed = useArmed();
  const { clears_s, off_then_looser } = known.questions.numb;
  const off = lastOff(known.entries);
  const state = countdown(clears_s, off && steadyOf(off), now);
  return (
    <>
      <main class="page">
        <h2 class="bout-title">Off, and wait</h2>
        <p class="lead">{off_then_looser}</p>
        <p class="break-clock" role="timer" aria-label="Left of the minute">
          {minutesSeconds(state?.leftS ?? 0)}
        </p>
        <p>Numbness that stays, or a limb that is white, blue or cold: tap Stop.</p>
      </main>
      <section class="set-panel" aria-label="Is it gone?">
        <button
          type="button"
          class="button main record"
          disabled={!armed}
          onClick={() => void tell("wrap.check", { numb: false })}
        >
          It cleared within the minute
        </button>
        <button
          type="button"
          class="button record"
          disabled={!armed}
          onClick={() => void tell("wrap.check", { numb: true })}
        >
          Still numb
        </button>
      </section>
    </>
  );
}
