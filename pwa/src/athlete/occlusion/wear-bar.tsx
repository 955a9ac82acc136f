import { useApp } from "../app-context";
import { minutesSeconds } from "../words/times";
import { type OcclusionKnown, useTell } from "./known";
import { tightnessDue } from "./felt";
import { useRing } from "./ring";
import { TightnessQuestion } from "./tightness-question";
import { capital, limbInWords, pieceIn } from "./words";
import { type Off, takeOff, type Worn } from "./worn";

interface Props {
  readonly known: OcclusionKnown;
  readonly worn: Worn;
  readonly seconds: number | null;
  /** It should be off already; the Stop screen says more. */
  readonly why: Off | null;
}

/** The last minute before the limit is told. */
const SOON_S = 60;

/** Time on, the limit, the break that follows; numbness is asked for here. */
export function WearBar({ known, worn, seconds, why }: Props) {
  const { router } = useApp();
  const tell = useTell();
  const { wrap, side, limitS, breakS, exercise } = worn;
  const asks = !why && !wrap.asked && (seconds ?? 0) >= known.questions.numb.asked_s;
  const due = why || asks ? null : tightnessDue(worn);
  const soon = (seconds ?? 0) >= limitS - SOON_S;
  useRing(soon ? 1 : null, 2);
  const stopped = router.place.value === "/stop";
  return (
    <aside class={soon ? "wrap-bar wrap-soon" : "wrap-bar"} aria-label="Wrap on">
      <p class="wrap-clock" role="timer" aria-label="Time with the wrap on">
        <span class="wrap-time">{seconds === null ? "–:–" : minutesSeconds(seconds)}</span>
        <span class="wrap-word">
          of {minutesSeconds(limitS)}, then {minutesSeconds(breakS)} off
        </span>
      </p>
      {stopped ? (
        <button type="button" class="button main" onClick={() => takeOff(tell, worn, seconds)}>
          It is off
        </button>
      ) : (
        <button type="button" class="button wrong" onClick={() => router.go("/stop")}>
          Something is wrong
        </button>
      )}
      <p class="wrap-limit">
        {capital(limbInWords(wrap.limb))}: {pieceIn(exercise, !side)} on
      </p>
      {asks && <NumbQuestion known={known} worn={worn} seconds={seconds} />}
      {due && (
        <TightnessQuestion key={`${due.after} ${due.was}`} known={known} worn={worn} due={due} />
      )}
    </aside>
  );
}

function NumbQuestion({ known, worn, seconds }: Omit<Props, "why">) {
  const { router } = useApp();
  const tell = useTell();
  const { revision, session, set } = worn.wrap;
  useRing(1, 1);

  function answer(numb: boolean): void {
    void tell("wrap.check", { numb }, { revision, session, set });
    if (!numb) return;
    takeOff(tell, worn, seconds);
    router.go("/set");
  }

  return (
    <fieldset class="wrap-numb">
      <legend>Numb, or tingling?</legend>
      <button type="button" class="button main" onClick={() => answer(false)}>
        No
      </button>
      <button type="button" class="button alarm" onClick={() => answer(true)}>
        Yes: off now
      </button>
      <p class="small">{known.questions.numb.go_on.replace("Go on. ", "")}</p>
    </fieldset>
  );
}
