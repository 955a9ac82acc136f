/**
 * Keeps a block's draft in this browser at every edit, and brings it to the server when it can. The
 * draft goes only once the server has said that it holds the very same document. A saver that was
 * left goes on only as long as its text is the one kept here: another one may write on by then.
 */
import { effect, signal, type ReadonlySignal, type Signal } from "@preact/signals";

import { NoAnswer, Refused, type Fault } from "../../api/client";
import type { Block } from "../../api/types";
import { draftOf, dropDraft, keepDraft } from "../block/drafts";
import { ask, type Desk } from "../shell/desk-state";
import { inPlainWords } from "../shell/plain-words";
import { bringBlock, type Bring, type Brought } from "./bring";

export type Saving =
  | { readonly kind: "saved"; readonly at: string | null }
  | { readonly kind: "kept" | "saving" | "unreached" | "not kept" }
  | { readonly kind: "refused"; readonly why: string };

export interface Saver {
  readonly id: ReadonlySignal<string>;
  readonly saving: ReadonlySignal<Saving>;
  /** What the server found wrong with the draft that it took all the same. */
  readonly faults: ReadonlySignal<readonly Fault[]>;
  readonly changed: (document: Block) => void;
  readonly saveNow: () => void;
  readonly stop: () => void;
}

interface Beginning {
  readonly id: string;
  readonly base: string | null;
  /** A draft that the server does not have yet. */
  readonly unsaved: Block | null;
  readonly onId: (id: string) => void;
  /** When the server's state was written, where `base` does not say it. */
  readonly at?: string | null;
  /** How a draft is brought to the server; as a block where nothing else is said. */
  readonly bring?: Bring;
  /** Under whose name drafts are kept here; the coach's where nothing else is said. */
  readonly owner?: string;
}

const PAUSE_MS = 1_200;
const FIRST_RETRY_MS = 2_000;
const LAST_RETRY_MS = 60_000;

export function createSaver(desk: Desk, beginning: Beginning): Saver {
  const id = signal(beginning.id);
  const { at = beginning.base, bring = bringBlock } = beginning;
  const saving: Signal<Saving> = signal({ kind: "saved", at });
  const faults = signal<readonly Fault[]>([]);
  const owner = beginning.owner ?? desk.coach.peek()?.id ?? "";
  let base = beginning.base;
  let waiting: Block | null = beginning.unsaved;
  let sending = false;
  let stopped = false;
  let retryMs = FIRST_RETRY_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const later = (ms: number) => {
    clearTimeout(timer);
    timer = setTimeout(() => void push(), ms);
  };

  const keepWaiting = (): boolean => {
    if (waiting === null) return true;
    const draft = { document: waiting, base, at: desk.now() };
    const safe = keepDraft(desk.shelf, owner, id.peek(), draft);
    desk.unsaved.value = safe ? null : "This browser cannot keep the draft.";
    return safe;
  };

  const isKept = (document: Block) => {
    const draft = draftOf(desk.shelf, owner, id.peek());
    return JSON.stringify(draft?.document) === JSON.stringify(document);
  };

  const took = (answer: Brought, document: Block) => {
    faults.value = answer.faults;
    retryMs = FIRST_RETRY_MS;
    if (!answer.taken) {
      saving.value = { kind: "refused", why: "mend the faults first" };
      if (waiting !== document) later(PAUSE_MS);
      return;
    }
    base = answer.base;
    if (!stopped || isKept(document)) dropDraft(desk.shelf, owner, id.peek());
    if (waiting === document) waiting = null;
    if (stopped) {
      later(PAUSE_MS);
      return;
    }
    if (answer.id !== id.peek()) {
      id.value = answer.id;
      beginning.onId(answer.id);
    }
    if (waiting === null) {
      desk.unsaved.value = null;
      saving.value = { kind: "saved", at: answer.at };
    } else {
      keepWaiting();
      later(PAUSE_MS);
    }
  };

  const failed = (fault: unknown, document: Block) => {
    if (fault instanceof NoAnswer) {
      saving.value = { kind: "unreached" };
      later(retryMs);
      retryMs = Math.min(retryMs * 2, LAST_RETRY_MS);
      return;
    }
    saving.value = { kind: "refused", why: inPlainWords(fault) };
    if (fault instanceof Refused && fault.retryAfterS !== null) later(fault.retryAfterS * 1_000);
    else if (waiting !== document) later(PAUSE_MS);
  };

  const push = async () => {
    clearTimeout(timer);
    if (sending || waiting === null || (stopped && !isKept(waiting))) return;
    const document = waiting;
    sending = true;
    saving.value = { kind: "saving" };
    try {
      const answer = await ask(desk, () => bring(id.peek(), document, base));
      sending = false;
      took(answer, document);
    } catch (fault) {
      sending = false;
      failed(fault, document);
    }
  };

  const changed = (document: Block) => {
    waiting = document;
    saving.value = { kind: keepWaiting() ? "kept" : "not kept" };
    later(PAUSE_MS);
  };

  const saveNow = () => void push();
  window.addEventListener("online", saveNow);
  const afterLogIn = effect(() => {
    if (desk.logIns.value > 0) saveNow();
  });
  if (waiting !== null) saving.value = { kind: "kept" };
  saveNow();

  const stop = () => {
    saveNow();
    stopped = true;
    afterLogIn();
    clearTimeout(timer);
    window.removeEventListener("online", saveNow);
  };
  return { id, saving, faults, changed, saveNow, stop };
}
