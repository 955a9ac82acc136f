/** Keys that mean something anywhere inside a part of the page, beside what each field does itself. */
import { useEffect, useRef } from "preact/hooks";

type KeyDeed = (event: KeyboardEvent) => (() => void) | null;

/** A reference for the part; a key that has a deed goes no further. */
export function useKeys(deedOf: KeyDeed) {
  const part = useRef<HTMLDivElement>(null);
  const newest = useRef(deedOf);
  newest.current = deedOf;
  useEffect(() => {
    const element = part.current;
    const press = (event: KeyboardEvent) => {
      const deed = newest.current(event);
      if (!deed) return;
      event.preventDefault();
      event.stopPropagation();
      deed();
    };
    element?.addEventListener("keydown", press);
    return () => element?.removeEventListener("keydown", press);
  }, []);
  return part;
}
