/** Sleeve stacks: which of the loads at hand asks for the least work, and what is to be done. */
import type { SheetLoad } from "../api/types";

export interface Handling {
  /** Plates that come off, outermost first. */
  readonly off: readonly number[];
  /** Plates that go on, in order. */
  readonly on: readonly number[];
}

/** From one stack to another, last on first off. Plates are listed innermost first. */
export function handling(from: readonly number[], to: readonly number[]): Handling {
  let same = 0;
  while (same < from.length && same < to.length && from[same] === to[same]) same += 1;
  return { off: from.slice(same).toReversed(), on: to.slice(same) };
}

function plates({ off, on }: Handling): number {
  return off.length + on.length;
}

/**
 * The load of that many kilograms that is hung with the fewest plates moved; where several are as
 * good, the preferred one. Null where the kit cannot make it.
 */
export function loadOf(
  loads: readonly SheetLoad[],
  kg: number,
  hanging: readonly number[] = [],
  preferred: number | null = null,
): number | null {
  const work = (index: number) => plates(handling(hanging, loads[index]?.side ?? []));
  let best: number | null = null;
  for (const [index, load] of loads.entries()) {
    if (load.kg !== kg) continue;
    const less = best === null || work(index) < work(best);
    const asGood = best !== null && index === preferred && work(index) === work(best);
    if (less || asGood) best = index;
  }
  return best;
}

/** The next heavier or lighter load that the kit can make, by steps of different loads. */
export function stepLoad(loads: readonly SheetLoad[], kg: number, steps: number): number | null {
  const rising = [...new Set(loads.map((load) => load.kg))].sort((one, other) => one - other);
  const here = rising.findIndex((each) => each >= kg);
  const from = here === -1 ? rising.length - 1 : here;
  return rising[Math.min(Math.max(from + steps, 0), rising.length - 1)] ?? null;
}
