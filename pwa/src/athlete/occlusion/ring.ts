import { useEffect } from "preact/hooks";

import { useApp } from "../app-context";

/** Rings at once and each time that the number changes; null: silence. */
export function useRing(number: number | null, times: number): void {
  const { alarm } = useApp();
  useEffect(() => {
    if (number !== null) alarm.ring(times);
  }, [number, times, alarm]);
}
