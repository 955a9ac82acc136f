import { useMore } from "../later";
import type { AdviceProps } from "./advice-strip";

/** What the notch walk suggests for a set that is done for the first time. */
export function Advice(props: AdviceProps) {
  const { exercise, answer } = props.here;
  const wanted = exercise.notches !== undefined && !answer;
  const { more } = useMore(wanted);
  return wanted && more ? <more.AdviceStrip {...props} /> : null;
}
