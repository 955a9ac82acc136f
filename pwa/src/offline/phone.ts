/** The phone without its screens: what it holds, recording, and the exchange with the server. */
import type { Paired } from "../api/sync";
import type { LoadSheet } from "../api/types";
import type { Clock, Timers } from "./clock";
import type { Kept, Pin, Running, Settings } from "./database";
import type { Draft } from "./entry";
import type { Ask } from "./exchange";
import { pinOf } from "./ledger-store";
import * as store from "./phone-store";
import { createRecorder, type Unsaved } from "./recorder";
import { type Count, createSteady, NO_JUMPS, type Times } from "./steady";
import { type Storage, StorageFailed } from "./storage";
import { createSync, type Sync, type SyncState } from "./sync";
import { createIds } from "./uuid";

interface PhoneParts {
  readonly storage: Storage;
  readonly ask: Ask;
  readonly clock: Clock;
  readonly count: Count;
  readonly timers: Timers;
  readonly random: () => number;
  /** Runs the work while no other page of this phone syncs. */
  readonly alone: (work: () => Promise<void>) => Promise<void>;
  /** Tells the other pages that something has changed. */
  readonly tell: () => void;
  /** Asks the browser to keep the storage; answers whether it will. */
  readonly persist: () => Promise<boolean>;
  /** Lets go of what is kept beside the storage. */
  readonly forgetPictures: () => Promise<void>;
}

export interface PhoneState extends store.Holdings {
  readonly loaded: boolean;
  /** On its way to the storage, or refused by it. */
  readonly unsaved: readonly Unsaved[];
  readonly fault: StorageFailed | null;
  readonly sync: SyncState;
}

export interface Phone extends Sync {
  readonly state: () => PhoneState;
  readonly subscribe: (listener: () => void) => () => void;
  /** This moment, by the time of day and on the clock that all clocks count on. */
  readonly times: () => Times;
  /** An id that comes after every one that was made on this phone, whatever its clock says. */
  readonly newId: () => string;
  /** Reads everything again, as after another page's change. */
  readonly load: () => Promise<void>;
  readonly record: (draft: Draft, begins?: LoadSheet) => Promise<boolean>;
  /** Tries the storage again after a fault. */
  readonly retry: () => Promise<void>;
  readonly saveRamp: (session: string, exercise: string, done: number) => Promise<void>;
  /** Null: the set is over. */
  readonly saveRunning: (session: string, key: string, running: Running | null) => Promise<void>;
  readonly saveSettings: (change: Partial<Settings>) => Promise<void>;
  readonly takePairing: (pairing: Paired) => Promise<void>;
  /** Forgets everything on this phone. */
  readonly wipe: () => Promise<void>;
}

const IDLE: SyncState = { running: false, last: null, nextAt: null };

export function createPhone(parts: PhoneParts): Phone {
  const { storage } = parts;
  const listeners = new Set<() => void>();
  let writes = 0;
  let jumpsUnsaved = 0;
  let state: PhoneState = {
    ...store.NOTHING,
    loaded: false,
    unsaved: [],
    fault: null,
    sync: IDLE,
  };

  function change(part: Partial<PhoneState>): void {
    state = { ...state, ...part };
    for (const listener of listeners) listener();
  }

  const steady = createSteady({ ...parts, onJump: () => void keepJumps() });
  const ids = createIds(() => state.entries.map(({ id }) => id));

  const recorder = createRecorder({
    storage,
    timers: parts.timers,
    onChange: (unsaved) => change({ unsaved }),
    onSaved: takeKept,
    onFault: (fault) => change({ fault }),
  });

  const sync = createSync({
    ...parts,
    onTaken: refresh,
    onState: (next) => change({ sync: next }),
  });

  function takeKept(kept: Kept, begins?: LoadSheet): void {
    writes += 1;
    const entries = [...state.entries.filter(({ id }) => id !== kept.id), kept];
    const pins = begins ? [...state.pins, pinOf(begins, kept)] : state.pins;
    change({ entries, pins, fault: null });
    parts.tell();
    sync.poke("entry");
    if (kept.entry.kind === "set.done" && !state.notes.persisted) void askToPersist();
  }

  async function askToPersist(): Promise<void> {
    const persisted = await parts.persist().catch(() => false);
    // A second transaction would stand in the way of the next tap's.
    if (persisted === state.notes.persisted) return;
    await guarded(async () => {
      change({ notes: await store.saveFact(storage, "notes", { persisted }) });
    });
  }

  async function keepJumps(): Promise<void> {
    const jumps = steady.jumps();
    jumpsUnsaved += 1;
    await guarded(async () => {
      change({ notes: await store.saveFact(storage, "notes", { jumps }) });
      parts.tell();
    });
    writes += 1;
    jumpsUnsaved -= 1;
  }

  async function load(): Promise<void> {
    await guarded(async () => {
      const before = writes;
      const holdings = await store.readAll(storage);
      // Something was recorded while this was being read, so it may lack that.
      if (writes !== before) return await load();
      if (jumpsUnsaved === 0) steady.adopt(holdings.notes.jumps ?? NO_JUMPS);
      change({ ...holdings, loaded: true, fault: null });
    });
  }

  async function refresh(): Promise<void> {
    await load();
    parts.tell();
  }

  /** A storage fault is shown and never thrown at the screen. */
  async function guarded(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (fault) {
      if (!(fault instanceof StorageFailed)) throw fault;
      change({ fault });
    }
  }

  function record(draft: Draft, begins?: LoadSheet): Promise<boolean> {
    if (state.entries.some(({ id }) => id === draft.id)) return Promise.resolve(true);
    steady.times();
    const jumpedMs = steady.jumps().byMs;
    return recorder.record({ draft, ...(begins && { begins }), ...(jumpedMs && { jumpedMs }) });
  }

  async function retry(): Promise<void> {
    await load();
    await recorder.retry();
  }

  function saveRamp(session: string, exercise: string, done: number): Promise<void> {
    return savePin(session, (pin) => ({ ...pin, ramp: { ...pin.ramp, [exercise]: done } }));
  }

  function saveRunning(session: string, key: string, running: Running | null): Promise<void> {
    return savePin(session, (pin) => {
      const { [key]: _ended, ...others } = pin.running ?? {};
      return { ...pin, running: running ? { ...others, [key]: running } : others };
    });
  }

  function savePin(session: string, changed: (pin: Pin) => Pin): Promise<void> {
    const show = () =>
      change({ pins: state.pins.map((pin) => (pin.session === session ? changed(pin) : pin)) });
    return shownAtOnce(show, () => store.changePin(storage, session, changed));
  }

  function saveSettings(part: Partial<Settings>): Promise<void> {
    const show = () => change({ settings: { ...state.settings, ...part } });
    return shownAtOnce(show, () => store.saveFact(storage, "settings", part));
  }

  async function shownAtOnce(show: () => void, save: () => Promise<unknown>): Promise<void> {
    show();
    await guarded(async () => {
      await save();
      writes += 1;
      show();
    });
  }

  async function takePairing(pairing: Paired): Promise<void> {
    await store.pairWith(storage, pairing);
    await refresh();
    sync.poke("asked");
  }

  async function wipe(): Promise<void> {
    await store.wipe(storage);
    await parts.forgetPictures();
    await refresh();
  }

  function subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  const { poke, watch, settled, stop } = sync;
  return {
    state: () => state,
    subscribe,
    times: steady.times,
    newId: () => ids(parts.clock.now()),
    load,
    record,
    retry,
    saveRamp,
    saveRunning,
    saveSettings,
    takePairing,
    wipe,
    poke,
    watch,
    settled,
    stop,
  };
}
