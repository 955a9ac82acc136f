/** Bringing a block to the server, without making a second one where an answer was lost. */
import type { Fault } from "../../api/client";
import type { Block } from "../../api/types";
import type { SavedBlock } from "../answers";
import { isOnlyHere } from "../block/drafts";
import { block, blocks, newBlock, saveBlock } from "../desk";

/** How many of the blocks that were changed last may be the one whose answer was lost. */
const LOOKED_AT = 3;

export interface Brought {
  readonly id: string;
  /** The server's state from now on. */
  readonly base: string;
  /** When that was written; null where nothing has been yet. */
  readonly at: string | null;
  readonly faults: readonly Fault[];
  /** Whether the server keeps it in spite of its faults. */
  readonly taken: boolean;
}

/** Brings a draft that began from the state `base`. */
export type Bring = (id: string, document: Block, base: string | null) => Promise<Brought>;

export async function bringBlock(id: string, document: Block): Promise<Brought> {
  const saved = await save(id, document);
  return { ...saved, base: saved.updated_at, at: saved.updated_at, taken: true };
}

async function save(id: string, document: Block): Promise<SavedBlock> {
  if (!isOnlyHere(id)) return saveBlock(id, document);
  const stored = await storedAs(document.key);
  return stored === null ? newBlock(document) : saveBlock(stored, document);
}

async function storedAs(key: string): Promise<string | null> {
  const newest = (await blocks()).slice(0, LOOKED_AT);
  const found = await Promise.all(newest.map(({ id }) => block(id)));
  return found.find(({ document }) => document.key === key)?.id ?? null;
}
