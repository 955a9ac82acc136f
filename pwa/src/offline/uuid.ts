/** Fills the array with chance; `crypto.getRandomValues` outside of tests. */
type Chance = (bytes: Uint8Array<ArrayBuffer>) => Uint8Array<ArrayBuffer>;

const deviceChance: Chance = (bytes) => crypto.getRandomValues(bytes);

/** A UUID of version 7 (RFC 9562): 48 bits of time in milliseconds, 74 bits of chance. */
export function uuid7(now: number, chance: Chance = deviceChance): string {
  const bytes = chance(new Uint8Array(16));
  for (let index = 0; index < 6; index += 1) {
    bytes[index] = Math.floor(now / 2 ** (8 * (5 - index))) % 256;
  }
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  const parts = [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20)];
  return `${parts.join("-")}-${hex.slice(20)}`;
}

/**
 * Ids that rise from one to the next although the clock may not (RFC 9562, section 6.2): of two answers the
 * greater id is the later one. `known`: those that are there already.
 */
export function createIds(
  known: () => readonly string[],
  chance?: Chance,
): (now: number) => string {
  let last = "";
  return (now) => {
    last = [...known(), last].reduce((one, other) => (one > other ? one : other));
    last = uuid7(Math.max(now, last === "" ? 0 : msIn(last) + 1), chance);
    return last;
  };
}

function msIn(id: string): number {
  return Number.parseInt(id.replace("-", "").slice(0, 12), 16);
}
