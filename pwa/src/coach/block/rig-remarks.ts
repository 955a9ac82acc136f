/** What is to be minded of rigs that stand side by side: what all have in common is said once. */
import type { RigOffer } from "../answers";

export type RigRemark = RigOffer["remarks"][number];

const GRAVITY: readonly RigRemark["severity"][] = ["stop", "warn", "note"];
const GUESSED = /: estimated from its size, measure this band$/;

/** The remarks that every one of several offers makes. */
export function sharedRemarks(offers: readonly RigOffer[]): RigRemark[] {
  const [first, ...others] = offers.map(allOf);
  if (!first || others.length === 0) return [];
  return first.filter(({ words }) =>
    others.every((remarks) => remarks.some((each) => each.words === words)),
  );
}

/** The remarks of one offer but the shared ones, the gravest first. */
export function remarksOf(offer: RigOffer, shared: readonly RigRemark[]): RigRemark[] {
  const own = allOf(offer).filter(({ words }) => !shared.some((each) => each.words === words));
  return own.sort((one, other) => GRAVITY.indexOf(one.severity) - GRAVITY.indexOf(other.severity));
}

/** Bands that nobody measured are named in one remark. */
function allOf({ unmeasured, remarks }: RigOffer): RigRemark[] {
  const others = remarks.filter(({ words }) => !GUESSED.test(words));
  if (unmeasured.length === 0) return others;
  return [{ severity: "warn", words: `not measured: ${unmeasured.join("; ")}` }, ...others];
}
