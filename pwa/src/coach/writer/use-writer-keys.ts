/** The writer's keys: undo and redo wherever the focus is, and saving at once. */
import { useEffect } from "preact/hooks";

import type { Writer } from "./writer-state";

export function useWriterKeys(writer: Writer, saveNow: () => void): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const deed = deedOf(event, writer, saveNow);
      if (!deed) return;
      event.preventDefault();
      deed();
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, []);
}

function deedOf(event: KeyboardEvent, writer: Writer, saveNow: () => void): (() => void) | null {
  switch (event.key.toLowerCase()) {
    case "z":
      return event.shiftKey ? writer.redo : writer.undo;
    case "y":
      return writer.redo;
    case "s":
      return saveNow;
    default:
      return null;
  }
}
