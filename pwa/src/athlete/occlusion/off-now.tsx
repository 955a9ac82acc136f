import { useLayoutEffect, useRef } from "preact/hooks";

import type { Session } from "../../offline/ledger-view";
import { useApp } from "../app-context";
import { useRecorder } from "../session/recording";
import { viewSession } from "../session/view";
import { minutesSeconds } from "../words/times";
import { type OcclusionKnown, useTell } from "./known";
import { NextLine } from "./next-line";
import { TwoLines } from "./two-lines";
import { capital, limbInWords, pieceIn } from "./words";
import { type Off, takeOff, type Worn } from "./worn";
import { useRing } from "./ring";

interface Props {
  readonly known: OcclusionKnown;
  readonly worn: Worn;
  readonly seconds: number | null;
  readonly why: Off;
}

const AGAIN_S = 5;
/** A wrap that is this long over its limit was forgotten in the app, hardly on the limb. */
const FORGOTTEN_S = 300;

/** Takes over the whole screen until the wrap is off. */
export function OffNow({ known, worn, seconds, why }: Props) {
  const { router } = useApp();
  const tell = useTell();
  const box = useRef<HTMLDialogElement>(null);
  const { exercise, side, limitS, session } = worn;
  const piece = pieceIn(exercise, !side);
  const over = (seconds ?? 0) - limitS;
  useRing(why === "done" ? 0 : Math.floor((seconds ?? 0) / AGAIN_S), why === "done" ? 2 : 3);
  useLayoutEffect(() => box.current?.showModal?.(), []);
  return (
    <dialog
      ref={box}
      class="off-now"
      aria-labelledby="off-now"
      onCancel={(event) => event.preventDefault()}
      onClose={({ currentTarget }) => currentTarget.showModal()}
    >
      <h2 id="off-now">{capital(piece)} off now</h2>
      <p class="off-limb">
        {capital(limbInWords(worn.wrap.limb))}
        {seconds !== null && `, ${minutesSeconds(seconds)} on`}
      </p>
      <p>{WHY[why](limitS)}</p>
      {why === "done" && exercise && session && <NextLine exercise={exercise} session={session} />}
      <TwoLines lines={known.questions.two_lines} />
      <button type="button" class="button main record" onClick={() => takeOff(tell, worn, seconds)}>
        It is off
      </button>
      {over > FORGOTTEN_S && (
        <button type="button" class="button" onClick={() => takeOff(tell, worn, limitS)}>
          It came off in time
        </button>
      )}
      <button type="button" class="button wrong" onClick={() => router.go("/stop")}>
        Something is wrong
      </button>
      {why === "done" && session && <NotYet session={session} />}
    </dialog>
  );
}

const WHY: Readonly<Record<Off, (limitS: number) => string>> = {
  done: () => "That was the last set of this limb.",
  limit: (limitS) => `The limit of ${minutesSeconds(limitS)} is reached. Stop where you are.`,
  unknown: () => "This phone's clock was changed: nobody knows how long it has been on.",
  over: () => "The session is over.",
};

/** The last set was recorded by mistake. */
function NotYet({ session }: { readonly session: Session }) {
  const recorder = useRecorder(session);
  const { last } = viewSession(session, null);
  if (!last) return null;
  return (
    <button type="button" class="button quiet" onClick={() => recorder.undo(last.set, last.side)}>
      Not done yet: back to the set
    </button>
  );
}
