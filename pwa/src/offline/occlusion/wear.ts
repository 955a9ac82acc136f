/** Wraps and cuffs that are on: since when, how long, and whether the limb went numb. */
import type { NumbRules } from "../../api/screening";
import { SECOND_MS } from "../clock";
import { is } from "../entry";
import { type Placed, steadyOf } from "../ledger-view";
import type { Times } from "../steady";
import { dayOf, inOrder, msOf } from "./order";

export interface Wrap {
  readonly id: string;
  readonly limb: string;
  readonly revision: number | null;
  readonly session: string | null;
  /** The first set that was to be done with it. */
  readonly set: string | null;
  readonly onAt: number;
  /** The same on the steady clock. */
  readonly steadyOn: number;
  /** Numbness was asked for and answered since it went on. */
  readonly asked: boolean;
}

/** Put on and not taken off yet, the earliest first. */
export function openWraps(entries: readonly Placed[]): Wrap[] {
  const on = new Map<string, Wrap>();
  for (const placed of inOrder(entries)) {
    const { entry } = placed;
    if (is(entry, "wrap.on")) {
      const { id, revision, session, set } = entry;
      const { limb } = entry.body;
      const since = { onAt: msOf(placed), steadyOn: steadyOf(placed) };
      on.set(limb, { id, limb, revision, session, set, ...since, asked: false });
    }
    if (is(entry, "wrap.off")) on.delete(entry.body.limb);
    if (is(entry, "wrap.check"))
      for (const [limb, wrap] of on) on.set(limb, { ...wrap, asked: true });
  }
  return [...on.values()];
}

/**
 * Seconds of wear, by the time of day and by the steady clock, whichever is more; null where the phone's clock
 * was set back and nobody has counted, or may have slept meanwhile.
 */
export function wornS(
  { onAt, steadyOn }: Pick<Wrap, "onAt" | "steadyOn">,
  { now, steady, lostAt }: Times,
): number | null {
  const ms = Math.max(now - onAt, steady - steadyOn);
  const lost = lostAt !== null && lostAt >= steadyOn;
  return lost || ms < -SECOND_MS ? null : Math.max(0, Math.floor(ms / SECOND_MS));
}

/** The last time that a wrap came off, in any session but one, on a sort of limb or on any. */
export function lastOff(
  entries: readonly Placed[],
  wanted: { readonly arm?: boolean; readonly notIn?: string } = {},
): Placed | null {
  const off = inOrder(entries).findLast(
    ({ entry }) =>
      is(entry, "wrap.off") &&
      (wanted.notIn === undefined || entry.session !== wanted.notIn) &&
      (wanted.arm === undefined || isArm(entry.body.limb) === wanted.arm),
  );
  return off ?? null;
}

export function isArm(limb: string): boolean {
  return limb.includes("arm");
}

/**
 * What numbness means for today. `clearing`: the wrap came off early and the first time, and nobody has
 * said yet whether it cleared. `once`: it did, so once more and looser. `closed`: not again today.
 */
export type Numbness = "none" | "clearing" | "once" | "closed";

export function numbness(entries: readonly Placed[], today: string, rules: NumbRules): Numbness {
  let state: Numbness = "none";
  let onAt: number | null = null;
  for (const placed of inOrder(entries)) {
    const { entry } = placed;
    if (is(entry, "wrap.on")) onAt = msOf(placed);
    if (!is(entry, "wrap.check") || dayOf(placed) !== today) continue;
    if (entry.body.numb) state = afterNumb(state, onAt, msOf(placed), rules);
    else if (state === "clearing") state = "once";
  }
  return state;
}

function afterNumb(
  state: Numbness,
  onAt: number | null,
  at: number,
  { early_s }: NumbRules,
): Numbness {
  const s = onAt === null ? Infinity : (at - onAt) / SECOND_MS;
  return state === "none" && s >= 0 && s <= early_s ? "clearing" : "closed";
}
