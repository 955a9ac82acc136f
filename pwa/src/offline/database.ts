/** The phone's database: what is kept, and how it is opened. */
import {
  type DBSchema,
  type IDBPDatabase,
  type IDBPTransaction,
  openDB,
  type StoreNames,
} from "idb";

import type { Answers } from "../api/screening";
import type { FeedItem, Paired, Trouble, Verdict } from "../api/sync";
import type { LoadSheet } from "../api/types";
import type { Entry, SetDone } from "./entry";
import type { Jumps } from "./steady";

const NAME = "undercroft";
const VERSION = 1;

/** Whose phone this is, and where its flows stand. */
export interface Identity extends Paired {
  /** The last `n` given; entries of a device are numbered 1, 2, 3… */
  readonly lastN: number;
  /** The highest `stored_through` that the server has named. */
  readonly storedThrough: number;
  /** The feed has to be taken anew: just paired, or the server's database has a new life. */
  readonly snapshotDue?: boolean;
  /** A copy of this phone has used its numbers: it needs a new device id. */
  readonly renewDue?: boolean;
  /** The server refuses this device: everything is kept until it is paired again. */
  readonly refused?: boolean;
  /** It is refused because the coach unpaired it. */
  readonly revoked?: boolean;
  /** It is refused because the coach erased what the server had of the athlete. */
  readonly erased?: boolean;
}

/** An entry with what has become of it. */
export interface Kept {
  readonly id: string;
  readonly athlete: string;
  readonly device: string;
  readonly n: number;
  readonly entry: Entry;
  /** By how much this phone's clock had jumped when it was recorded; absent: not at all. */
  readonly jumpedMs?: number;
  /** The device, as long as the entry waits in the outbox; only a verdict removes it. */
  readonly outbox?: string;
  readonly verdict?: Verdict;
  readonly position?: number;
  readonly problem?: Trouble;
  /** The server's time of the verdict. */
  readonly verdictAt?: number;
}

/** What goes on within a set: a clock, and what of the set is done. */
export interface Running {
  /** When its clock was started, on the steady clock; null where it stands. */
  readonly since: number | null;
  /** Repetitions of each block, or seconds of each repetition held. */
  readonly parts: readonly number[];
  /** The result as it was filled in. */
  readonly done: SetDone;
}

/** A session that was begun here stays on the sheet that it began with. */
export interface Pin {
  readonly session: string;
  readonly sheet: LoadSheet;
  readonly startedAt: number;
  /** As of its first entry. */
  readonly jumpedMs?: number;
  /** `n` of the entry that started it: the order in which sessions began. */
  readonly n: number;
  readonly device: string;
  /** Warm-up sets done, by exercise. */
  readonly ramp: Readonly<Record<string, number>>;
  /** By `answerKey` of the set. */
  readonly running?: Readonly<Record<string, Running>>;
}

export interface TrendPoint {
  readonly lift: string;
  readonly at: number;
  readonly kg: number;
  readonly low_kg: number;
  readonly high_kg: number;
}

/** A band on the hanging scale: whole centimetres, tenths of a kilogram. */
export interface Measuring {
  readonly restCm: number;
  readonly stretched: boolean;
  readonly readings: readonly { readonly cm: number; readonly tenths: number }[];
  /** What the scale and the tape show now. */
  readonly cm: number;
  readonly tenths: number;
}

export interface Settings {
  /** Show pounds; absent: as the coach's document says. */
  readonly pounds?: boolean;
  readonly sound?: boolean;
  /** How speed sets are told; absent: by quality. */
  readonly speed?: "quality" | "velocity";
  /** Answers of a screening that is not finished; they stay on this phone. */
  readonly screening?: Answers;
  /** Bands whose measuring is under way, by their key. */
  readonly measuring?: Readonly<Record<string, Measuring>>;
  /** Installing was offered, and the athlete wants to hear no more of it. */
  readonly installOffered?: boolean;
  /** Urgent words that the athlete has read. */
  readonly read?: string;
}

/** What is known about the exchange with the server, for the sync line. */
export interface Notes {
  readonly lastAnswerAt?: number;
  readonly lastSentAt?: number;
  /** The server's clock minus this one, in ms. */
  readonly clockOff?: number;
  readonly jumps?: Jumps;
  readonly persisted?: boolean;
}

export interface Facts {
  identity: Identity;
  settings: Settings;
  notes: Notes;
}

interface Schema extends DBSchema {
  facts: { key: keyof Facts; value: Facts[keyof Facts] };
  entries: {
    key: string;
    value: Kept;
    indexes: { outbox: [string, number]; number: [string, number] };
  };
  feed: { key: [string, string]; value: FeedItem };
  pins: { key: string; value: Pin };
  trend: { key: [string, number]; value: TrendPoint };
}

export type Database = IDBPDatabase<Schema>;
export type Mode = "readonly" | "readwrite";
export type Transaction<M extends Mode> = IDBPTransaction<Schema, StoreNames<Schema>[], M>;

export const STORES: StoreNames<Schema>[] = ["facts", "entries", "feed", "pins", "trend"];

/**
 * Upgrades keep every entry. The connection closes by itself where another page wants to upgrade,
 * and `onLost` is told whenever it is gone.
 */
export function open(onLost: () => void, name = NAME): Promise<Database> {
  return openDB<Schema>(name, VERSION, {
    upgrade(database, from) {
      if (from < 1) createStores(database);
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      onLost();
    },
    terminated: onLost,
  });
}

function createStores(database: Database): void {
  database.createObjectStore("facts");
  const entries = database.createObjectStore("entries", { keyPath: "id" });
  entries.createIndex("outbox", ["outbox", "n"]);
  entries.createIndex("number", ["device", "n"]);
  database.createObjectStore("feed", { keyPath: ["kind", "key"] });
  database.createObjectStore("pins", { keyPath: "session" });
  database.createObjectStore("trend", { keyPath: ["lift", "at"] });
}
