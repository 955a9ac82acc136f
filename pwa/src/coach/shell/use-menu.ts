import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";

/**
 * A part that opens by a button where there is little room. It closes on arrival at another place,
 * by Escape, and when something outside `within` is pressed or takes the focus.
 */
export function useMenu(within: RefObject<HTMLElement | null>, place: string) {
  const [open, setOpen] = useState(false);
  useEffect(() => setOpen(false), [place]);
  useEffect(() => {
    if (!open) return undefined;
    const leave = (event: Event) => {
      if (event.target instanceof Node && !within.current?.contains(event.target)) setOpen(false);
    };
    const escape = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      setOpen(false);
      within.current?.querySelector<HTMLElement>("[aria-expanded]")?.focus();
    };
    document.addEventListener("pointerdown", leave);
    document.addEventListener("focusin", leave);
    document.addEventListener("keydown", escape);
    return () => {
      document.removeEventListener("pointerdown", leave);
      document.removeEventListener("focusin", leave);
      document.removeEventListener("keydown", escape);
    };
  }, [open]);
  return { open, toggle: () => setOpen((before) => !before) };
}
