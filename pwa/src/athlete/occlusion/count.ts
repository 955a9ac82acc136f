/**
 * Milliseconds of wear that this page has seen go by, whatever became of the phone's clock. `ms`: what the
 * time of day says; it counts once, when the wrap is first seen.
 */
export function createCount(
  monotonicMs: () => number,
): (wrap: string | null, ms: number) => number | null {
  let seen: { readonly wrap: string; readonly since: number } | null = null;
  return (wrap, ms) => {
    if (wrap === null) seen = null;
    else if (seen?.wrap !== wrap) seen = ms >= 0 ? { wrap, since: monotonicMs() - ms } : null;
    return seen && monotonicMs() - seen.since;
  };
}
