/**
 * Transactions with patience. A mobile browser can leave a connection dead after suspension, so every
 * call has a time-out, one reopening and one retry; then it fails aloud.
 */
import { type Timers, deviceTimers } from "./clock";
import { type Database, type Mode, open, STORES, type Transaction } from "./database";

export const PATIENCE_MS = 3_000;

export type Work<M extends Mode, T> = (transaction: Transaction<M>) => Promise<T>;

export interface Storage {
  /**
   * Runs the work in one transaction and answers once that is durable on this phone. The work must
   * bear being run twice: a first try may have been stored though it seemed to hang.
   * Throws `StorageFailed`, or what the work itself threw.
   */
  run<M extends Mode, T>(mode: M, work: Work<M, T>): Promise<T>;
  /** Lets go of the connection; the next call opens it again. */
  close(): void;
}

/** The phone's storage did not take or give something, twice. */
export class StorageFailed extends Error {
  override readonly name = "StorageFailed";

  /** A newer app has changed the database: this page has to be loaded again. */
  get outdated(): boolean {
    return named(this.cause, "VersionError");
  }

  get full(): boolean {
    return isFull(this.cause);
  }
}

interface Options {
  /** Where the storage is full, lets go of what can be had again. */
  readonly makeRoom?: () => Promise<void>;
  readonly open?: (onLost: () => void) => Promise<Database>;
  readonly timers?: Timers;
  readonly patienceMs?: number;
}

export function openStorage(options: Options = {}): Storage {
  const { timers = deviceTimers, patienceMs = PATIENCE_MS } = options;
  const connect = options.open ?? open;
  let connection: Promise<Database> | null = null;

  async function once<M extends Mode, T>(mode: M, work: Work<M, T>): Promise<T> {
    connection ??= connect(lose);
    const database = await connection;
    return await transact(database, mode, work);
  }

  function lose(): void {
    connection = null;
  }

  function close(): void {
    const closing = connection;
    connection = null;
    closing?.then(
      (database) => database.close(),
      () => undefined,
    );
  }

  async function run<M extends Mode, T>(mode: M, work: Work<M, T>): Promise<T> {
    try {
      return await within(patienceMs, timers, once(mode, work));
    } catch (fault) {
      close();
      if (isFull(fault)) await options.makeRoom?.().catch(() => undefined);
    }
    try {
      return await within(patienceMs, timers, once(mode, work));
    } catch (cause) {
      close();
      throw new StorageFailed("this phone's storage does not answer", { cause });
    }
  }

  return { run, close };
}

async function transact<M extends Mode, T>(
  database: Database,
  mode: M,
  work: Work<M, T>,
): Promise<T> {
  const transaction = database.transaction(STORES, mode, { durability: "strict" });
  const done = transaction.done;
  try {
    const result = await work(transaction);
    await done;
    return result;
  } catch (fault) {
    done.catch(() => undefined);
    // A request of a transaction that the browser broke off says only that it was.
    const reason = transaction.error ?? fault;
    abort(transaction);
    throw reason;
  }
}

function abort(transaction: { abort(): void }): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already.
  }
}

function within<T>(ms: number, timers: Timers, promise: Promise<T>): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const stop = timers.after(ms, () => reject(new Error(`no answer within ${ms} ms`)));
    promise.then(resolve, reject).finally(stop);
  });
}

function isFull(cause: unknown): boolean {
  return named(cause, "QuotaExceededError");
}

function named(cause: unknown, name: string): boolean {
  return cause instanceof Error && cause.name === name;
}
