import { useEffect, useState } from "preact/hooks";

import { untilNextSecond } from "../../offline/clocks";
import { useApp } from "../app-context";

/**
 * The steady clock, drawn anew on each full second after `startedAt` and when the app comes back into
 * view. Null: no clock is wanted.
 */
export function useSeconds(startedAt: number | null): number {
  const { phone } = useApp();
  const [, setDrawn] = useState(0);
  useEffect(() => {
    if (startedAt === null) return;
    let timer: ReturnType<typeof setTimeout>;
    const tick = () => {
      clearTimeout(timer);
      const time = phone.times().steady;
      setDrawn(time);
      timer = setTimeout(tick, untilNextSecond(startedAt, time) + 5);
    };
    tick();
    document.addEventListener("visibilitychange", tick);
    return () => {
      clearTimeout(timer);
      document.removeEventListener("visibilitychange", tick);
    };
  }, [startedAt, phone]);
  return phone.times().steady;
}
