/** The loads that the text becomes for one athlete, worked out anew a moment after each edit. */
import type { Block } from "../../api/types";
import type { LoadsAnswer } from "../answers";
import { loads } from "../desk";
import { useAfterPause, type Asked } from "../shell/use-after-pause";

export type Loads = Asked<LoadsAnswer>;

/** With the block's `id` the athlete's own changes to it count. */
export function useLoads(block: Block, athlete: string, id?: string): Loads {
  return useAfterPause(athlete ? block : null, athlete, (signal) =>
    loads(block, athlete, { signal, ...(id ? { block: id } : {}) }),
  );
}
