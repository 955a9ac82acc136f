/** When the phone talks to the server: on what occasions, how soon again, one page at a time. */
import { backoff } from "./backoff";
import { MINUTE_MS, type Timers } from "./clock";
import { exchange, type ExchangeParts, type Outcome } from "./exchange";

/** Entries that follow each other quickly go together. */
export const DEBOUNCE_MS = 1_500;
export const SLOW_TIMER_MS = 2 * MINUTE_MS;
/** A server cannot silence a phone for longer than this. */
const LONGEST_SILENCE_MS = 60 * MINUTE_MS;

/**
 * Why to sync now. Coming back into view or online is a hint that it may work again, so the waiting
 * begins anew.
 */
type Occasion = "start" | "visible" | "online" | "entry" | "timer" | "asked" | "worker";

interface SyncParts extends ExchangeParts {
  readonly timers: Timers;
  readonly random: () => number;
  /** Runs the work while no other page of this phone syncs. */
  readonly alone: (work: () => Promise<void>) => Promise<void>;
  readonly onState: (state: SyncState) => void;
}

export interface SyncState {
  readonly running: boolean;
  readonly last: Outcome | null;
  /** When it will be tried again by itself after a failure, on this phone's clock. */
  readonly nextAt: number | null;
}

export interface Sync {
  readonly poke: (occasion: Occasion) => void;
  /** Whether the app is in view: the slow timer only runs then. */
  readonly watch: (visible: boolean) => void;
  /** Resolves when nothing is running. */
  readonly settled: () => Promise<void>;
  readonly stop: () => void;
}

export function createSync(parts: SyncParts): Sync {
  const { clock, timers } = parts;
  let state: SyncState = { running: false, last: null, nextAt: null };
  let failures = 0;
  let silentUntil = 0;
  let queued = false;
  let again = false;
  /** Something happened during this round that speaks for trying at once, even after a failure. */
  let hurried = false;
  let stopped = false;
  let current: Promise<void> = Promise.resolve();
  let callOff = (): void => undefined;
  let callOffSlow = (): void => undefined;

  function poke(occasion: Occasion): void {
    if (stopped) return;
    if (occasion === "entry") schedule(failures > 0 ? null : DEBOUNCE_MS);
    else {
      if (occasion !== "timer") {
        failures = 0;
        hurried = state.running;
      }
      schedule(0);
    }
  }

  /** Null: leave what is scheduled. A server that asked to be left alone is left alone. */
  function schedule(ms: number | null): void {
    if (ms === null) return;
    const now = clock.now();
    const silence = Math.min(silentUntil - now, LONGEST_SILENCE_MS);
    const wait = Math.max(ms, silence);
    callOff();
    if (wait <= 0) start();
    else callOff = timers.after(wait, start);
  }

  function start(): void {
    if (state.running) {
      again = true;
      return;
    }
    if (queued) return;
    queued = true;
    current = parts.alone(run).catch(() => {
      queued = false;
      end({ is: "failed", why: "storage" });
    });
  }

  async function run(): Promise<void> {
    queued = false;
    if (stopped) return;
    tell({ running: true, last: state.last, nextAt: null });
    end(await exchange(parts));
  }

  function end(outcome: Outcome): void {
    if (outcome.is === "failed") failures += 1;
    else failures = 0;
    if (outcome.is === "busy") silentUntil = clock.now() + outcome.waitMs;
    const wait = hurried && outcome.is === "failed" ? 0 : waitAfter(outcome);
    hurried = false;
    tell({ running: false, last: outcome, nextAt: wait === null ? null : clock.now() + wait });
    const more = again;
    again = false;
    if (stopped) return;
    if (wait !== null) schedule(wait);
    else if (more && outcome.is === "done") schedule(0);
  }

  function waitAfter(outcome: Outcome): number | null {
    if (outcome.is === "failed") return backoff(failures, parts.random);
    return outcome.is === "busy" ? outcome.waitMs : null;
  }

  function tell(next: SyncState): void {
    state = next;
    parts.onState(state);
  }

  function watch(visible: boolean): void {
    callOffSlow();
    if (!visible || stopped) return;
    callOffSlow = timers.after(SLOW_TIMER_MS, () => {
      poke("timer");
      watch(true);
    });
  }

  /** A round may have begun another one at its end. */
  async function settled(): Promise<void> {
    for (let last: Promise<void> | null = null; last !== current;) {
      last = current;
      await last;
    }
  }

  function stop(): void {
    stopped = true;
    callOff();
    callOffSlow();
  }

  return { poke, watch, settled, stop };
}
