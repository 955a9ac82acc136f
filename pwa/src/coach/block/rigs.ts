/** Rigs of an exercise: what is written down, what is looked for, and whether an offer was taken. */
import type { Rig } from "../../api/types";

const FIRST_SHARE = 20;

/** Another sort of rig, or the first one: what was named or led for the sort before does not fit it. */
export function withPart(rig: Rig | undefined, part: Rig["part"]): Rig {
  const { things: _, route: __, assists: ___, ...kept } = rig ?? { part };
  return { ...kept, part, share_percent: rig?.share_percent ?? FIRST_SHARE };
}

/** The share alone, so that each kit chooses what hangs. */
export function withoutThings(rig: Rig): Rig {
  const { things: _, ...rest } = rig;
  return rest;
}

export function namesThings(rig: Rig): boolean {
  return (rig.things?.length ?? 0) > 0;
}

/** What to look for: things that are named, and the way they are led, are one answer of many. */
export function soughtFor(rig: Rig): Rig {
  if (!namesThings(rig)) return rig;
  const { route: _, per_side: __, ...rest } = withoutThings(rig);
  return rest;
}

/** Whether the plan hangs the very things of the offer, led in the same way. */
export function isTaken(plan: Rig, offer: Rig): boolean {
  const keys = (rig: Rig) => [...(rig.things ?? [])].sort().join(" ");
  return plan.part === offer.part && plan.route === offer.route && keys(plan) === keys(offer);
}
