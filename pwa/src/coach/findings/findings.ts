/** Findings of the checks: told once where they repeat, counted, and walked through one by one. */
import type { Finding } from "../answers";
import type { Placed } from "../block/faults";
import type { Place } from "../block/place";

/** The same for findings that are told together: of one exercise, of one check, in the same words. */
export function topicOf({ severity, check, path, what }: Finding): string {
  return JSON.stringify([severity, check, path.replace(/\.sets\..*$/, ""), what]);
}

/** The first finding of each topic, in the order in which they came: stops first. */
export function toldOnce(findings: readonly Finding[]): Finding[] {
  const firsts = new Map<string, Finding>();
  for (const each of findings) {
    const topic = topicOf(each);
    if (!firsts.has(topic)) firsts.set(topic, each);
  }
  return [...firsts.values()];
}

interface Counts {
  readonly stops: number;
  /** Warnings and notes: nothing forbids to send. */
  readonly others: number;
}

export function countsOf(findings: readonly Finding[]): Counts {
  const told = toldOnce(findings);
  const stops = told.filter((each) => each.severity === "stop").length;
  return { stops, others: told.length - stops };
}

/** "2 stops, 5 to look at"; nothing where there is nothing. */
export function countsInWords({ stops, others }: Counts): string {
  const parts = [
    stops > 0 ? `${stops} ${stops === 1 ? "stop" : "stops"}` : "",
    others > 0 ? `${others} to look at` : "",
  ];
  return parts.filter(Boolean).join(", ");
}

/** The one that follows the topic; the first after the last, or where the topic is gone. */
export function nextAfter(findings: readonly Finding[], topic: string | null): Finding | undefined {
  const told = toldOnce(findings);
  const at = told.findIndex((each) => topicOf(each) === topic);
  return told[(at + 1) % told.length];
}

/** The week and session of a path; null for the block as a whole. */
export function placeOf({ path }: Placed): Place | null {
  const [, week, session] = /^weeks\.(\d+)(?:\.sessions\.(\d+))?/.exec(path) ?? [];
  if (week === undefined) return null;
  return { week: Number(week), session: session === undefined ? null : Number(session) };
}

/**
 * Which sets of a line the topic speaks of, "set 2" or "sets 1, 3"; nothing where it is all of them.
 * A line has `count` sets.
 */
export function setsInWords(findings: readonly Finding[], topic: string, count: number): string {
  const paths = findings.filter((each) => topicOf(each) === topic).map((each) => each.path);
  const sets = new Set(paths.flatMap((path) => /\.sets\.(\d+)/.exec(path)?.[1] ?? []));
  if (sets.size === 0 || sets.size === count) return "";
  const numbers = [...sets].map((place) => Number(place) + 1);
  return `${numbers.length === 1 ? "set" : "sets"} ${numbers.join(", ")}`;
}
