import { useEffect, useState } from "preact/hooks";

import { MINUTE_MS } from "../../offline/clock";
import { useApp } from "../app-context";

/** The time of day for words like "today": fresh on each minute and when the app comes into view. */
export function useInView(): number {
  const { clock } = useApp();
  const [now, setNow] = useState(() => clock.now());
  useEffect(() => {
    const tick = () => setNow(clock.now());
    const timer = setInterval(tick, MINUTE_MS);
    document.addEventListener("visibilitychange", tick);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", tick);
    };
  }, [clock]);
  return now;
}
