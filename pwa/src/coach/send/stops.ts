/** Stops of a refused sending: grouped by check, and set aside with a reason in writing. */
import type { Finding, Overrule, Refusal, SendAnswer } from "../answers";

/** Stops of one check; one reason may serve them all. */
export interface StopGroup {
  readonly check: string;
  readonly mayOverrule: boolean;
  readonly stops: readonly Finding[];
}

/** In the order in which each check is first met. */
export function groupsOf(stops: readonly Finding[]): StopGroup[] {
  const groups = new Map<string, Finding[]>();
  for (const stop of stops) {
    const key = JSON.stringify([stop.check, stop.may_overrule]);
    groups.set(key, [...(groups.get(key) ?? []), stop]);
  }
  return [...groups.values()].flatMap((same) => {
    const [first] = same;
    return first ? [{ check: first.check, mayOverrule: first.may_overrule, stops: same }] : [];
  });
}

export interface Wording {
  readonly said: Finding;
  readonly places: readonly string[];
}

/** What is said in the same words at several places is said once. */
export function wordingsOf(stops: readonly Finding[]): Wording[] {
  const same = (one: Finding, other: Finding) =>
    one.what === other.what && one.right === other.right;
  const firsts = stops.filter((stop, at) => stops.findIndex((each) => same(each, stop)) === at);
  return firsts.map((said) => ({
    said,
    places: stops.filter((each) => same(each, said)).map((each) => each.where),
  }));
}

/** Reasons by athlete and check. */
export type Reasons = Readonly<Record<string, string>>;

export function reasonKey(athlete: string, check: string): string {
  return JSON.stringify([athlete, check]);
}

const SHORTEST_REASON = 3;
export const LONGEST_REASON = 500;

/** One of them is final: nothing goes to this athlete before it is mended. */
export function isFinal({ stops }: Refusal): boolean {
  return stops.some((stop) => !stop.may_overrule);
}

/** All stops of the athlete set aside; null while one cannot be, or while a reason is missing. */
export function overrulesFor(refusal: Refusal, reasons: Reasons): Overrule[] | null {
  if (isFinal(refusal)) return null;
  const overrules = refusal.stops.map(({ check, path, what }) => {
    const why = (reasons[reasonKey(refusal.athlete, check)] ?? "").trim();
    return { check, path, what, why };
  });
  return overrules.every(({ why }) => why.length >= SHORTEST_REASON) ? overrules : null;
}

/** The answer to sending again to some, put together with the one before. */
export function merged(before: SendAnswer, after: SendAnswer): SendAnswer {
  const answered = new Set([...after.sent, ...after.refused].map((each) => each.athlete));
  const newer = new Map(after.refused.map((each) => [each.athlete, each]));
  const sentNow = new Set(after.sent.map((each) => each.athlete));
  return {
    sent: [...before.sent.filter((each) => !answered.has(each.athlete)), ...after.sent],
    refused: before.refused
      .filter((each) => !sentNow.has(each.athlete))
      .map((each) => newer.get(each.athlete) ?? each),
  };
}
