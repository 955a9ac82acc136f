/** Stable keys of weeks, sessions, exercises and sets: never used twice, so results stay tied. */

export type Random = () => number;

/** No look-alikes: keys stand in exported tables that people read. */
const LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
const LENGTH = 7;

/** A key that `taken` does not hold. A key drawn at random does not come back after a removal. */
export function freshKey(taken: ReadonlySet<string>, random: Random): string {
  for (;;) {
    const key = Array.from({ length: LENGTH }, () => letter(random)).join("");
    if (!taken.has(key)) return key;
  }
}

function letter(random: Random): string {
  return LETTERS.charAt(Math.floor(random() * LETTERS.length));
}
