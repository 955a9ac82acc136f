/** What the desk keeps in this browser, as JSON. A full or forbidden storage is reported, not hidden. */

export type Shelf = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length">;

const PREFIX = "undercroft.desk.";

/** Whether it was kept. */
export function keep(shelf: Shelf, name: string, value: unknown): boolean {
  try {
    shelf.setItem(PREFIX + name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/** What was kept under the name; null where there is nothing that can be read. */
export function kept(shelf: Shelf, name: string): unknown {
  try {
    return JSON.parse(shelf.getItem(PREFIX + name) ?? "null");
  } catch {
    return null;
  }
}

export function forget(shelf: Shelf, name: string): void {
  try {
    shelf.removeItem(PREFIX + name);
  } catch {
    // A storage that cannot be reached holds nothing to forget.
  }
}

/** The names under which something is kept, of those that begin with `start`. */
export function keptNames(shelf: Shelf, start: string): string[] {
  const whole = PREFIX + start;
  const names = Array.from({ length: shelf.length }, (_, place) => shelf.key(place) ?? "");
  return names.filter((name) => name.startsWith(whole)).map((name) => name.slice(PREFIX.length));
}

export function keptName(event: StorageEvent): string | null {
  return event.key?.startsWith(PREFIX) ? event.key.slice(PREFIX.length) : null;
}
