/**
 * Takes entries from the screen to durable storage, one after the other. What the storage does not
 * take stays in memory, is said aloud, and is tried again.
 */
import type { LoadSheet } from "../api/types";
import type { Timers } from "./clock";
import type { Kept } from "./database";
import { append, type Told } from "./ledger-store";
import { type Storage, StorageFailed } from "./storage";

/** Storage that takes longer than this is shown to be on its way; a usual tap is drawn once, as saved. */
export const SHOWN_AFTER_MS = 120;

export interface Unsaved extends Told {
  /** The storage has refused it; until then it is on its way. */
  readonly failed: boolean;
}

interface RecorderParts {
  readonly storage: Storage;
  readonly timers: Timers;
  readonly onChange: (unsaved: readonly Unsaved[]) => void;
  readonly onSaved: (kept: Kept, begins?: LoadSheet) => void;
  readonly onFault: (fault: StorageFailed) => void;
}

export interface Recorder {
  /** Resolves once the entry is durable, to true, or the storage has failed, to false. */
  record(told: Told): Promise<boolean>;
  /** Tries again what the storage refused. */
  retry(): Promise<void>;
}

export function createRecorder(parts: RecorderParts): Recorder {
  let unsaved: readonly Unsaved[] = [];
  let last: Promise<unknown> = Promise.resolve();

  function show(): void {
    parts.onChange(unsaved);
  }

  function record(told: Told): Promise<boolean> {
    const { draft } = told;
    if (unsaved.some((each) => each.draft.id === draft.id)) return Promise.resolve(false);
    unsaved = [...unsaved, { ...told, failed: false }];
    const showLate = parts.timers.after(SHOWN_AFTER_MS, show);
    return inTurn(() => save(draft.id)).finally(showLate);
  }

  async function retry(): Promise<void> {
    const failed = unsaved.filter((each) => each.failed);
    for (const { draft } of failed) if (!(await inTurn(() => save(draft.id)))) return;
  }

  /** One after the other, so that numbers follow the order of the taps. */
  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  }

  async function save(id: string): Promise<boolean> {
    const found = unsaved.find((each) => each.draft.id === id);
    if (!found) return true;
    try {
      const kept = await append(parts.storage, found);
      unsaved = unsaved.filter((each) => each.draft.id !== id);
      parts.onSaved(kept, found.begins);
      show();
      return true;
    } catch (fault) {
      unsaved = unsaved.map((each) => (each.draft.id === id ? { ...each, failed: true } : each));
      parts.onFault(asStorageFault(fault));
      show();
      return false;
    }
  }

  return { record, retry };
}

function asStorageFault(cause: unknown): StorageFailed {
  if (cause instanceof StorageFailed) return cause;
  return new StorageFailed("the entry could not be stored", { cause });
}
