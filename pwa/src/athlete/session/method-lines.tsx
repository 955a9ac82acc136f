import { useMore } from "../later";
import type { AtHand } from "./at-hand";

/** What the method says of its sets beside the target; nothing where it says no more. */
export function MethodLines({ here }: { readonly here: AtHand }) {
  const { details, group, method } = here.exercise;
  const wanted = details !== undefined || group !== undefined || method === "timed";
  const { more } = useMore(wanted);
  return wanted && more ? <more.OwnLines here={here} /> : null;
}
