import type { Method } from "../../api/types";
import { useMore } from "../later";
import { type PanelProps, ResultPanel } from "./result-panel";

/** Methods whose sets are told another way than by load, repetitions and reserve. */
const OWN: ReadonlySet<Method> = new Set([
  "speed",
  "hold",
  "tempo",
  "cluster",
  "maximum-test",
  "timed",
]);

/** What is tapped for a set, as its method wants it told. */
export function MethodPanel(props: PanelProps) {
  const wanted = OWN.has(props.here.exercise.method);
  const { more, missing } = useMore(wanted);
  if (!wanted || missing) return <ResultPanel {...props} />;
  return more && <more.OwnPanel {...props} />;
}
