import { useEffect, useRef } from "preact/hooks";

import { countdown } from "../../../offline/clocks";
import { Stepper } from "../../../parts/stepper";
import { useAnnounce } from "../../device/announce";
import { count } from "../../words/sets";
import { PanelFoot } from "../panel-foot";
import { useRecorder } from "../recording";
import { DoneButton, type PanelProps, ResultPanel } from "../result-panel";
import { inBlocks, withBlock } from "./blocks";
import { ClockFace } from "./clock-face";
import { rule } from "./details";
import { Press } from "./press";
import { type RunningClock, useRunning } from "./running";

/** Blocks of repetitions with a short rest between: one tap a block. */
export function ClusterPanel(props: PanelProps) {
  const { here, done } = props;
  if (!done.blocks || done.blocks.length === 0) return <ResultPanel {...props} />;
  return here.answer ? <Correction {...props} /> : <Blocks {...props} planned={done.blocks} />;
}

function Blocks({ planned, ...props }: PanelProps & { readonly planned: readonly number[] }) {
  const { here, done, onChange } = props;
  const clock = useRunning(here);
  const recorder = useRecorder(here.view.session);
  const place = clock.parts.length;
  const reps = planned[place] ?? 0;
  const label = `Block ${place + 1} of ${planned.length}`;
  const record = (blocks: readonly number[]) => recorder.done(here.set, inBlocks(done, blocks));
  function blockDone(): void {
    const blocks = [...clock.parts, reps];
    if (blocks.length >= planned.length) record(blocks);
    else clock.start(done, blocks);
  }
  return (
    <>
      <BlockRest here={here} clock={clock} />
      <Stepper
        label={label}
        value={String(reps)}
        atLeast={reps === 0}
        onStep={(steps) => onChange(withBlock(done, place, reps + steps))}
      />
      <Press key={place} onPress={blockDone}>
        Done, {label.toLowerCase()}: {count(reps, "rep")}
      </Press>
      {place > 0 && (
        <button type="button" class="button tall" onClick={() => record(clock.parts)}>
          End the set here: {clock.parts.join(" + ")}
        </button>
      )}
      <PanelFoot {...props} />
    </>
  );
}

interface RestProps {
  readonly here: PanelProps["here"];
  readonly clock: RunningClock;
}

function BlockRest({ here, clock }: RestProps) {
  const seconds = rule(here.exercise, "block_rest_s")?.block_rest_s ?? 0;
  const state = countdown(seconds, clock.since, clock.now);
  const announce = useAnnounce();
  const before = useRef(state?.phase);
  useEffect(() => {
    const due = before.current === "running" && state?.phase === "over";
    before.current = state?.phase;
    return due ? announce(2, "Next block") : undefined;
  }, [state?.phase]);
  if (!state || state.phase === "forgotten" || seconds === 0) return null;
  const word = state.phase === "over" ? "go: next block" : "s until the next block";
  return <ClockFace name="Block rest" seconds={state.leftS} word={word} share={state.share} />;
}

function Correction(props: PanelProps) {
  const { done, onChange } = props;
  const blocks = done.blocks ?? [];
  return (
    <>
      <div class="fields">
        {blocks.map((reps, place) => (
          <Stepper
            key={place}
            label={`Block ${place + 1}`}
            value={String(reps)}
            atLeast={reps === 0}
            onStep={(steps) => onChange(withBlock(done, place, reps + steps))}
          />
        ))}
      </div>
      <DoneButton {...props} />
      <PanelFoot {...props} />
    </>
  );
}
