import { useEffect, useState } from "preact/hooks";

/** The width of an element in pixels, as it changes; 0 until it is known. */
export function useWidth(frame: { readonly current: HTMLElement | null }): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    setWidth(element.clientWidth);
    const watcher = new ResizeObserver(() => setWidth(element.clientWidth));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return width;
}
