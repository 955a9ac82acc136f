// @vitest-environment node
import { describe, expect, test } from "vitest";

import { type Database, open } from "./database";
import { openStorage, StorageFailed, type Work } from "./storage";

const PATIENCE_MS = 60;

const writeSettings: Work<"readwrite", string> = async (transaction) => {
  await transaction.objectStore("facts").put({ pounds: true }, "settings");
  return "written";
};

const readSettings: Work<"readonly", unknown> = (transaction) =>
  transaction.objectStore("facts").get("settings");

/** Connections of which the first so many never answer, as after a mobile browser's suspension. */
function deadAtFirst(count: number): { readonly open: () => Promise<Database>; opened: number } {
  const tried = {
    opened: 0,
    async open(): Promise<Database> {
      tried.opened += 1;
      const database = await open(() => undefined);
      if (tried.opened > count) return database;
      database.transaction = (() => ({
        done: new Promise<void>(() => undefined),
        objectStore: () => ({ put: hang, get: hang }),
        abort: () => undefined,
      })) as unknown as Database["transaction"];
      return database;
    },
  };
  return tried;
}

function hang(): Promise<never> {
  return new Promise(() => undefined);
}

describe("the phone's storage", () => {
  test("answers once what was written is durable", async () => {
    const storage = openStorage();
    await expect(storage.run("readwrite", writeSettings)).resolves.toBe("written");
    await expect(storage.run("readonly", readSettings)).resolves.toStrictEqual({ pounds: true });
  });

  test("asks the browser for strict durability", async () => {
    const asked: unknown[] = [];
    const connect = async () => {
      const database = await open(() => undefined);
      const original = database.transaction.bind(database);
      database.transaction = ((names: never, mode: never, options: unknown) => {
        asked.push(options);
        return original(names, mode, options as never);
      }) as unknown as Database["transaction"];
      return database;
    };
    await openStorage({ open: connect }).run("readwrite", writeSettings);
    expect(asked).toStrictEqual([{ durability: "strict" }]);
  });

  test("opens a dead connection again and tries once more", async () => {
    const dead = deadAtFirst(1);
    const storage = openStorage({ open: dead.open, patienceMs: PATIENCE_MS });
    await expect(storage.run("readwrite", writeSettings)).resolves.toBe("written");
    expect(dead.opened).toBe(2);
  });

  test("fails aloud when the second try hangs as well, and works again later", async () => {
    const dead = deadAtFirst(2);
    const storage = openStorage({ open: dead.open, patienceMs: PATIENCE_MS });
    await expect(storage.run("readwrite", writeSettings)).rejects.toThrow(StorageFailed);
    await expect(storage.run("readwrite", writeSettings)).resolves.toBe("written");
  });

  test("stores nothing of work that failed half-way", async () => {
    const storage = openStorage();
    const half: Work<"readwrite", void> = async (transaction) => {
      await writeSettings(transaction);
      throw new Error("half-way");
    };
    await expect(storage.run("readwrite", half)).rejects.toThrow(StorageFailed);
    await expect(storage.run("readonly", readSettings)).resolves.toBeUndefined();
  });

  test("that is full lets go of pictures, and then takes what was recorded", async () => {
    let pictures = 3;
    const full: Work<"readwrite", string> = (transaction) => {
      if (pictures > 0) throw new DOMException("", "QuotaExceededError");
      return writeSettings(transaction);
    };
    const makeRoom = () => {
      pictures = 0;
      return Promise.resolve();
    };
    await expect(openStorage({ makeRoom }).run("readwrite", full)).resolves.toBe("written");
  });

  test("lets go of no picture for any other fault, and fails aloud where that gave no room", async () => {
    let asked = 0;
    const makeRoom = () => {
      asked += 1;
      return Promise.reject(new Error("no cache"));
    };
    const failing = (name: string) => () => Promise.reject(new DOMException("", name));
    const storage = openStorage({ makeRoom });
    await expect(storage.run("readwrite", failing("AbortError"))).rejects.toThrow(StorageFailed);
    expect(asked).toBe(0);
    const full = storage.run("readwrite", failing("QuotaExceededError"));
    await expect(full).rejects.toMatchObject({ full: true });
    expect(asked).toBe(1);
  });

  test("says when the storage is full and when a newer app has changed it", () => {
    const full = new StorageFailed("", { cause: new DOMException("", "QuotaExceededError") });
    const newer = new StorageFailed("", { cause: new DOMException("", "VersionError") });
    expect([full.full, full.outdated, newer.full, newer.outdated]).toStrictEqual([
      true,
      false,
      false,
      true,
    ]);
  });

  test("lets go of its connection when another page wants to upgrade, and comes back", async () => {
    const storage = openStorage();
    await storage.run("readwrite", writeSettings);
    const wiped = await new Promise<boolean>((resolve) => {
      const request = indexedDB.deleteDatabase("undercroft");
      request.onsuccess = () => resolve(true);
      request.onblocked = () => resolve(false);
    });
    expect(wiped).toBe(true);
    await expect(storage.run("readonly", readSettings)).resolves.toBeUndefined();
  });

  test("can be closed while the app is hidden and used again after", async () => {
    const storage = openStorage();
    await storage.run("readwrite", writeSettings);
    storage.close();
    await expect(storage.run("readonly", readSettings)).resolves.toStrictEqual({ pounds: true });
  });
});
