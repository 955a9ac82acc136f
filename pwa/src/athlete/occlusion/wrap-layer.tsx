import "../look/occlusion.css";
import { openWraps, wornS } from "../../offline/occlusion/wear";
import { inOrder } from "../../offline/occlusion/order";
import { useApp } from "../app-context";
import { useSeconds } from "../device/now";
import { BreakBar } from "./break-bar";
import { type OcclusionKnown, useKnown } from "./known";
import { OffNow } from "./off-now";
import { WearBar } from "./wear-bar";
import { offNow, restingSince, wornOf } from "./worn";

/** Over every screen: the clock of the wrap that is on, and of the break after it. */
export function WrapLayer() {
  const known = useKnown();
  return known && <Layer known={known} />;
}

function Layer({ known }: { readonly known: OcclusionKnown }) {
  const { phone, sessions, router } = useApp();
  const [wrap] = openWraps(known.entries);
  const off = inOrder(known.entries).findLast(({ entry }) => entry.kind === "wrap.off");
  const resting = restingSince(off, sessions.value);
  const now = useSeconds(wrap?.steadyOn ?? resting?.offAt ?? null);
  if (!wrap) return resting && <BreakBar resting={resting} now={now} />;
  const worn = wornOf(wrap, sessions.value);
  const seconds = wornS(wrap, phone.times());
  const why = offNow(worn, seconds);
  // On the Stop screen nothing may cover what to do.
  if (why && router.place.value !== "/stop")
    return <OffNow known={known} worn={worn} seconds={seconds} why={why} />;
  return <WearBar known={known} worn={worn} seconds={seconds} why={why} />;
}
