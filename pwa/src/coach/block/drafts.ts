/** Drafts of blocks in this browser, one per coach and block, until the server has them. */
import type { Block } from "../../api/types";
import { forget, keep, kept, keptNames, type Shelf } from "../shell/kept";

export interface Draft {
  readonly document: Block;
  /** The server's state that the draft began from; null for a block that the server never had. */
  readonly base: string | null;
  readonly at: number;
}

const NEW = "new-";

export function newDraftId(key: string): string {
  return NEW + key;
}

/** Whether the block has only been written here so far. */
export function isOnlyHere(id: string): boolean {
  return id.startsWith(NEW);
}

/** Whose drafts of own changes are: kept apart from those of blocks, and for each athlete apart. */
export function ownerOf(coach: string, athlete: string): string {
  return `own.${coach}.${athlete}`;
}

export function draftName(coach: string, id: string): string {
  return `draft.${coach}.${id}`;
}

export function keepDraft(shelf: Shelf, coach: string, id: string, draft: Draft): boolean {
  return keep(shelf, draftName(coach, id), draft);
}

export function draftOf(shelf: Shelf, coach: string, id: string): Draft | null {
  return kept(shelf, draftName(coach, id)) as Draft | null;
}

export function dropDraft(shelf: Shelf, coach: string, id: string): void {
  forget(shelf, draftName(coach, id));
}

/** All drafts of this coach, newest first. */
export function draftsOf(shelf: Shelf, coach: string): (Draft & { readonly id: string })[] {
  const start = draftName(coach, "");
  const drafts = keptNames(shelf, start).flatMap((name) => {
    const draft = kept(shelf, name) as Draft | null;
    return draft ? [{ ...draft, id: name.slice(start.length) }] : [];
  });
  return drafts.sort((a, b) => b.at - a.at);
}

/** How many drafts this coach has here, those of own changes among them. */
export function draftCount(shelf: Shelf, coach: string): number {
  const own = keptNames(shelf, `draft.${ownerOf(coach, "")}`);
  return draftsOf(shelf, coach).length + own.length;
}

export type Opening =
  | { readonly from: "server" | "draft"; readonly document: Block; readonly base: string | null }
  | {
      readonly from: "both";
      readonly draft: Draft;
      readonly document: Block;
      readonly base: string;
    };

/**
 * What to open: a draft that began from the server's present state goes on; where the server's
 * state has moved on since, a person has to choose. A draft that the server holds word for word is
 * needless: its answer was lost, not its text.
 */
export function opening(
  draft: Draft | null,
  server: { readonly document: Block; readonly updated_at: string },
): Opening {
  const base = server.updated_at;
  if (!draft || JSON.stringify(draft.document) === JSON.stringify(server.document)) {
    return { from: "server", document: server.document, base };
  }
  if (draft.base === base) return { from: "draft", document: draft.document, base };
  return { from: "both", draft, document: server.document, base };
}
