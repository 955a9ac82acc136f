import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";

const USUAL = 170;

/** Height of an element in units of which its width has so many; kept up to date. */
export function useHeight(element: RefObject<HTMLElement | null>, width: number): number {
  const [height, setHeight] = useState(USUAL);
  useEffect(() => {
    const { current } = element;
    if (!current || !("ResizeObserver" in window)) return;
    const observer = new ResizeObserver(() => {
      const { clientWidth, clientHeight } = current;
      if (clientWidth > 0) setHeight(Math.round((clientHeight / clientWidth) * width));
    });
    observer.observe(current);
    return () => observer.disconnect();
  }, [element, width]);
  return height;
}
