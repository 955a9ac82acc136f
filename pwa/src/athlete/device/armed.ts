import { useEffect, useState } from "preact/hooks";

/** Longer than the gap between the taps of a nervous double tap. */
const PAUSE_MS = 450;

/**
 * False for a moment after the component is first drawn. The next set appears where the last one was
 * tapped, so a double tap would record both.
 */
export function useArmed(): boolean {
  const [armed, setArmed] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setArmed(true), PAUSE_MS);
    return () => clearTimeout(timer);
  }, []);
  return armed;
}
