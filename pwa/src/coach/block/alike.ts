/** Whether two documents have the same content, whatever the order of their fields. */
export function alike(one: unknown, other: unknown): boolean {
  return plain(one) === plain(other);
}

function plain(value: unknown): string | undefined {
  return JSON.stringify(value, (_, inner: unknown) =>
    inner && typeof inner === "object" && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
