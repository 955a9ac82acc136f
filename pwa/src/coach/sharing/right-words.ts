/** What rights are called, and what a link gives, in words. */
import type { Offer } from "../answers";
import type { Right } from "../shell/right";

export const RIGHTS = { read: "Read", write: "Read and write" } as const;

const GIVES: Readonly<Record<Right, string>> = {
  read: "may read",
  write: "may read and write",
  own: "takes over",
};

/** "may read and write", "takes over; you keep the right to read" */
export function givesInWords({ gives, keeps }: Pick<Offer, "gives" | "keeps">): string {
  if (gives !== "own") return GIVES[gives];
  return `${GIVES.own}; you keep ${keeps ? "the right to read" : "nothing"}`;
}

/** "Runa Falk", "Runa Falk and Aada Berg", "Runa Falk, Aada Berg and 3 more" */
export function namesInWords(names: readonly string[]): string {
  const [first = "nobody", second, ...more] = names;
  if (second === undefined) return first;
  if (more.length === 0) return `${first} and ${second}`;
  return `${first}, ${second} and ${more.length} more`;
}
