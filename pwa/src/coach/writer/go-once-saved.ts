/** Leaving for a page that shows what the server holds: at once, or as soon as it holds this text. */
import { useEffect, useState } from "preact/hooks";

import { go, useDesk } from "../shell/desk-state";
import type { Saver } from "./saver";

interface OnceSaved {
  readonly saved: boolean;
  /** Asked for, and not yet on the server. */
  readonly wanted: boolean;
  readonly leave: () => void;
}

export function useGoOnceSaved(saver: Saver, to: string): OnceSaved {
  const desk = useDesk();
  const [wanted, setWanted] = useState(false);
  const saved = saver.saving.value.kind === "saved";
  useEffect(() => {
    if (wanted && saved) go(desk, to);
  }, [wanted, saved]);
  const leave = () => {
    setWanted(true);
    saver.saveNow();
  };
  return { saved, wanted: wanted && !saved, leave };
}
