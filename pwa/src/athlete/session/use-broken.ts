import type { Use } from "../../offline/swaps";
import { newsOf, usePhoneState } from "../hooks";
import { isOf, proposalsOf } from "../kit/proposals";
import { usePropose } from "../kit/use-propose";

/** Tells the coach of a band that broke, so that the next sheets do without it. */
export function useBroken(): (use: Use) => void {
  const state = usePhoneState();
  const propose = usePropose();
  return ({ kind, key, name }) => {
    const row = newsOf(state, "kit")
      .at(-1)
      ?.bands?.find((band) => band.key === key);
    const piece = { list: "bands", name: key };
    const told = proposalsOf(state).some((one) => one.state === "waits" && isOf(one, piece));
    if (kind === "bands" && row && !told) propose(name, { kind: "gone", ...piece, row });
  };
}
