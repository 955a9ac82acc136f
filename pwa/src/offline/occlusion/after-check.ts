/** The questions 24, 48 and 72 hours after occlusion work. */
import type { AfterSign, Questions, Urgency } from "../../api/screening";
import { MINUTE_MS } from "../clock";
import { is } from "../entry";
import type { Placed } from "../ledger-view";
import { inOrder, msOf } from "./order";

const HOUR_MS = 60 * MINUTE_MS;
const URGENCIES: readonly Urgency[] = ["none", "leave-off", "see-today", "emergency"];

interface CheckDue {
  readonly hours: number;
  /** When the last wrap came off. */
  readonly offAt: number;
}

/** A later check answers the earlier ones too: it asks for the same signs. */
export function checkDue(
  entries: readonly Placed[],
  hours: readonly number[],
  now: number,
): CheckDue | null {
  const ordered = inOrder(entries);
  const last = ordered.findLastIndex(({ entry }) => entry.kind === "wrap.off");
  const off = ordered[last];
  if (!off) return null;
  const offAt = msOf(off);
  const answered = ordered
    .slice(last)
    .flatMap(({ entry }) => (is(entry, "after.check") ? [entry.body.hours] : []));
  const open = hours.filter(
    (each) => now - offAt >= each * HOUR_MS && !answered.some((a) => a >= each),
  );
  return open.length === 0 ? null : { hours: Math.max(...open), offAt };
}

/** The gravest of the signs decides; one that is not known is seen to today. */
export function urgencyOf(
  keys: readonly string[],
  signs: readonly (Pick<AfterSign, "key" | "urgency"> & { readonly from_h?: number })[],
  hours = Infinity,
): Urgency {
  const found = keys.map((key) => {
    const sign = signs.find((each) => each.key === key);
    if (!sign) return "see-today";
    return hours >= (sign.from_h ?? 0) ? sign.urgency : "none";
  });
  return URGENCIES.findLast((urgency) => found.includes(urgency)) ?? "none";
}

export function isUrgent(urgency: Urgency): boolean {
  return urgency === "see-today" || urgency === "emergency";
}

/** What to do about the ticked signs, the gravest first. */
export function doNow(
  keys: readonly string[],
  hours: number,
  { after_signs, after_advice, do_now }: Questions,
): string[] {
  const urgency = urgencyOf(keys, after_signs, hours);
  const advice = Object.keys(after_advice).filter((key) => keys.includes(key));
  return [do_now[urgency], ...advice.map((key) => after_advice[key] ?? "")];
}
