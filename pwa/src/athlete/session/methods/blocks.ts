/** A set in blocks: its repetitions are those of its blocks. */
import type { SetDone } from "../../../offline/entry";

export function inBlocks(done: SetDone, blocks: readonly number[]): SetDone {
  return { ...done, blocks, reps: blocks.reduce((sum, reps) => sum + reps, 0) };
}

export function withBlock(done: SetDone, place: number, reps: number): SetDone {
  const blocks = done.blocks ?? [];
  return inBlocks(
    done,
    blocks.map((each, index) => (index === place ? Math.max(0, reps) : each)),
  );
}
