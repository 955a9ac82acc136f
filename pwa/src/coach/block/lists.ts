/** Changes to a list that leave the list itself as it was. */

export function replaced<T>(list: readonly T[], at: number, item: T): T[] {
  return list.map((each, place) => (place === at ? item : each));
}

export function inserted<T>(list: readonly T[], at: number, ...items: readonly T[]): T[] {
  return [...list.slice(0, at), ...items, ...list.slice(at)];
}

export function without<T>(list: readonly T[], at: number, count = 1): T[] {
  return [...list.slice(0, at), ...list.slice(at + count)];
}

/** The list with one item moved; unchanged where there is no such item or place. */
export function moved<T>(list: readonly T[], from: number, to: number): T[] {
  const item = list[from];
  if (item === undefined || to < 0 || to >= list.length) return [...list];
  return inserted(without(list, from), to, item);
}
