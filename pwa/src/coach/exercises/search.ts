/** Looking exercises up: by words, by muscle, by what one athlete's kit can do. */
import type { CatalogueEntry, ForAthlete } from "../answers";

export interface Wanted {
  readonly text: string;
  /** "" for any. */
  readonly muscle: string;
  /** Only what stands in the chosen athlete's kit and no injury keeps away. */
  readonly onlyHere: boolean;
  readonly archived: boolean;
}

export const EVERYTHING: Wanted = { text: "", muscle: "", onlyHere: false, archived: false };

export type ByKey = ReadonlyMap<string, ForAthlete>;

/** What is wanted, the nearest names and the prime muscles first. */
export function found(
  exercises: readonly CatalogueEntry[],
  wanted: Wanted,
  here: ByKey | null = null,
): CatalogueEntry[] {
  const { muscle } = wanted;
  return exercises
    .filter((one) => wanted.archived || !one.archived)
    .filter((one) => says(one, wanted.text))
    .filter((one) => muscle === "" || one.prime.includes(muscle) || one.helpers.includes(muscle))
    .filter((one) => !wanted.onlyHere || here === null || canBeDone(here.get(one.key)))
    .toSorted(
      (one, other) =>
        rank(one, wanted) - rank(other, wanted) || one.name.localeCompare(other.name, "en"),
    );
}

/** Whether the kit has it all and nothing hurts; what nobody knows of is let through. */
export function canBeDone(one: ForAthlete | undefined): boolean {
  return one === undefined || (one.lacking.length === 0 && one.avoid.length === 0);
}

/** Every muscle that an exercise trains, by name. */
export function musclesOf(exercises: readonly CatalogueEntry[]): string[] {
  return [...new Set(exercises.flatMap((one) => one.prime))].toSorted();
}

/** Names of things that a kit lists in one line, of those that exercises ask for. */
export function thingsOf(exercises: readonly CatalogueEntry[]): string[] {
  const needs = new Set(exercises.flatMap((one) => one.needs));
  return [...needs].filter((need) => !LISTED_APART.has(need)).toSorted();
}

const LISTED_APART = new Set(["support", "landmine", "anchor"]);

/** Whether each typed word begins a word of the name, a muscle, the implement or a need. */
function says(one: CatalogueEntry, text: string): boolean {
  const whole = plain([one.name, one.implement, ...one.prime, ...one.helpers, ...one.needs]);
  return wordsOf(text).every((word) => whole.includes(` ${word}`));
}

function rank(one: CatalogueEntry, { text, muscle }: Wanted): number {
  const name = plain([one.name]);
  const named = wordsOf(text).every((word) => name.includes(` ${word}`));
  const begins = named && name.startsWith(plain([text]));
  return (begins ? 0 : named ? 1 : 2) + (muscle === "" || one.prime.includes(muscle) ? 0 : 10);
}

function wordsOf(text: string): string[] {
  return plain([text]).split(" ").filter(Boolean);
}

function plain(texts: readonly string[]): string {
  const words = texts.join(" ").toLowerCase().replace(/[’']/g, "");
  return ` ${words.replace(/[^\p{L}\p{N}]+/gu, " ").trim()}`;
}
