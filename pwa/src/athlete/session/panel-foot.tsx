import type { ComponentChildren } from "preact";

import { useApp } from "../app-context";
import type { AtHand } from "./at-hand";
import { useRecorder } from "./recording";
import { SwapButton } from "./swap-button";

interface Props {
  readonly here: AtHand;
  readonly onSkip: () => void;
  /** Between both. */
  readonly children?: ComponentChildren;
}

/** What else can be done with the set at hand. */
export function PanelFoot({ here, onSkip, children }: Props) {
  return (
    <div class="panel-foot">
      {here.answer ? (
        <Correction here={here} />
      ) : (
        <First here={here} onSkip={onSkip}>
          {children}
        </First>
      )}
    </div>
  );
}

function First({ here, onSkip, children }: Props) {
  const { router } = useApp();
  return (
    <>
      <button type="button" class="button quiet" onClick={onSkip}>
        Skip this set
      </button>
      <SwapButton exercise={here.exercise} />
      {children}
      <button type="button" class="button quiet" onClick={() => router.go("/sets")}>
        All sets
      </button>
    </>
  );
}

function Correction({ here }: Pick<Props, "here">) {
  const { focus } = useApp();
  const recorder = useRecorder(here.view.session);
  return (
    <>
      <button
        type="button"
        class="button quiet"
        onClick={() => {
          focus.value = { ...focus.value, correcting: null };
        }}
      >
        Leave as it was
      </button>
      <button type="button" class="button quiet" onClick={() => recorder.undo(here.set, here.side)}>
        Not done
      </button>
    </>
  );
}
