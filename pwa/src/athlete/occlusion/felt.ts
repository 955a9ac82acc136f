/** How tight the wrap felt when it went on. */
import { is } from "../../offline/entry";
import { answerKey } from "../../offline/fold";
import type { Worn } from "./worn";

/**
 * As it was said with the set that it went on for, or with the last set done since; null where it was never
 * said, as with a cuff.
 */
export function feltIn({ wrap, session, exercise, side }: Worn): number | null {
  const told = session?.running[answerKey(wrap.set ?? "", side)]?.done.tightness;
  if (told !== undefined) return told;
  const felt = (exercise?.sets ?? []).flatMap(({ key }) => {
    const record = session?.record.sets.get(key);
    const entry = side ? record?.sides.get(side) : record?.entry;
    const tightness = entry && is(entry, "set.done") ? entry.body.tightness : undefined;
    return tightness === undefined ? [] : [tightness];
  });
  return felt.at(-1) ?? null;
}
