import { useEffect } from "preact/hooks";

/** A component that takes the place of another one on the same screen begins at its top. */
export function useTop(): void {
  useEffect(() => window.scrollTo(0, 0), []);
}
