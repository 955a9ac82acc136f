/** The set screens of methods that need their own; what comes with the later part. */
import "../../look/methods.css";
import type { ComponentType } from "preact";

import type { Method } from "../../../api/types";
import type { AtHand } from "../at-hand";
import { type PanelProps, ResultPanel } from "../result-panel";
import { ClusterPanel } from "./cluster-panel";
import { HoldPanel } from "./hold-panel";
import { linesOf } from "./lines";
import { SpeedPanel } from "./speed-panel";
import { TempoPanel } from "./tempo-panel";
import { TestPanel } from "./test-panel";
import { TimedPanel } from "./timed-panel";

export { TellTests } from "./tell-test";

const PANELS: Partial<Record<Method, ComponentType<PanelProps>>> = {
  speed: SpeedPanel,
  hold: HoldPanel,
  tempo: TempoPanel,
  cluster: ClusterPanel,
  "maximum-test": TestPanel,
  timed: TimedPanel,
};

export function OwnPanel(props: PanelProps) {
  const Panel = PANELS[props.here.exercise.method] ?? ResultPanel;
  return <Panel {...props} />;
}

export function OwnLines({ here }: { readonly here: AtHand }) {
  return (
    <>
      {linesOf(here).map((line) => (
        <p key={line} class="method-line">
          {line}
        </p>
      ))}
    </>
  );
}
