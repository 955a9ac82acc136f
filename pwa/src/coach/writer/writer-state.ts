/** The block that is being written: its history, what is selected, what was copied. */
import { computed, signal, type ReadonlySignal, type Signal } from "@preact/signals";
import { createContext } from "preact";
import { useContext } from "preact/hooks";

import type { Fault } from "../../api/client";
import type { Block, ExercisePlan, LoadSheet, SessionPlan } from "../../api/types";
import type { Finding, Named, OwnLine } from "../answers";
import { beginning, changed, redone, undone, type History } from "../block/history";
import type { Random } from "../block/keys";
import { placeAfter, placeOf, type Place } from "../block/place";
import type { Choices } from "../block/unfolding";

export type Copied =
  | { readonly kind: "session"; readonly session: SessionPlan }
  | { readonly kind: "exercise"; readonly exercise: ExercisePlan; readonly name: string };

export interface Writer {
  readonly history: Signal<History<Block>>;
  readonly block: ReadonlySignal<Block>;
  readonly place: Signal<Place>;
  readonly copied: Signal<Copied | null>;
  /** Keys of sets that begin a line of their own although they ask for the same. */
  readonly starts: Signal<ReadonlySet<string>>;
  /** Key of the exercise just added, whose sets nobody has written yet. */
  readonly fresh: Signal<string | null>;
  /** What was chosen for unfolding a week, by its key: an undo leaves it to be taken up again. */
  readonly unfoldings: Signal<ReadonlyMap<string, Choices>>;
  readonly random: Random;
  /** `field` names what is typed into, so that its keystrokes are undone together. */
  readonly edit: (change: (block: Block) => Block, field?: string) => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** `session` is the key of the one to begin at; the first one where there is no such. */
export function createWriter(
  document: Block,
  random: Random,
  now: () => number,
  onChange: (block: Block) => void,
  session: string | null = null,
): Writer {
  const history = signal(beginning(document));
  const place = signal(placeOf(document, session));
  const step = (next: History<Block>) => {
    if (next === history.peek()) return;
    const before = history.peek().present;
    history.value = next;
    if (next.present === before) return;
    place.value = placeAfter(place.peek(), before, next.present);
    onChange(next.present);
  };
  return {
    history,
    block: computed(() => history.value.present),
    place,
    copied: signal(null),
    starts: signal(new Set<string>()),
    fresh: signal<string | null>(null),
    unfoldings: signal(new Map<string, Choices>()),
    random,
    edit: (change, field = "") => {
      const before = history.peek();
      step(changed(before, change(before.present), field, now()));
    },
    undo: () => step(undone(history.peek())),
    redo: () => step(redone(history.peek())),
  };
}

/** What the server says of the text as it stands. */
export interface Remarks {
  /** Of the text itself. */
  readonly faults: readonly Fault[];
  /** Of the checks, for the chosen athlete. */
  readonly findings: readonly Finding[];
  readonly sheets: readonly LoadSheet[];
  /** For whom the loads are shown; null for nobody. */
  readonly athlete: Named | null;
  /** Where that athlete does otherwise than this text says. */
  readonly own: readonly OwnLine[];
}

/** The block under the pen of one athlete alone. */
interface Beneath {
  /** As it is written for everyone. */
  readonly block: Block;
  readonly athlete: Named;
}

const WriterShared = createContext<Writer | null>(null);
const RemarksShared = createContext<Remarks>({
  faults: [],
  findings: [],
  sheets: [],
  athlete: null,
  own: [],
});
const BeneathShared = createContext<Beneath | null>(null);

export const WriterProvider = WriterShared.Provider;
export const RemarksProvider = RemarksShared.Provider;
export const BeneathProvider = BeneathShared.Provider;

export function useWriter(): Writer {
  const writer = useContext(WriterShared);
  if (!writer) throw new Error("useWriter is called outside WriterProvider");
  return writer;
}

export function useRemarks(): Remarks {
  return useContext(RemarksShared);
}

/** What lies beneath where one athlete's own block is written; null where the block itself is. */
export function useBeneath(): Beneath | null {
  return useContext(BeneathShared);
}
