// @vitest-environment node
import { beforeEach, describe, expect, test } from "vitest";

import { IN_SHEET, newDraft, SHEET, START } from "../../tests/fakes/phone";
import { DAY_MS } from "./clock";
import type { Kept } from "./database";
import { append, forgetOld, NotPaired, sendAgain, settle, waiting } from "./ledger-store";
import { pairWith, readAll } from "./phone-store";
import { openStorage, type Storage, StorageFailed } from "./storage";

const PAIRING = {
  device: "device-1",
  athlete: { id: "athlete-1", name: "Osk Venner" },
  coach: "Ida Moor",
  epoch: "epoch-1",
  cursor: 0,
};

let storage: Storage;

beforeEach(async () => {
  storage = openStorage();
  await pairWith(storage, PAIRING);
});

async function record(count: number): Promise<Kept[]> {
  const kept: Kept[] = [];
  for (let index = 0; index < count; index += 1) {
    const body = { load_kg: 80, reps: 5, rir: 2 };
    kept.push(
      await append(storage, {
        draft: newDraft("set.done", body, { ...IN_SHEET, set: `s${index}` }),
      }),
    );
  }
  return kept;
}

async function outbox(device = "device-1"): Promise<number[]> {
  return (await waiting(storage, device, 100)).map(({ n }) => n);
}

describe("an entry that is recorded", () => {
  test("gets the next number of this device, without gaps", async () => {
    await record(3);
    expect(await outbox()).toStrictEqual([1, 2, 3]);
  });

  test("is one entry however often it is tapped", async () => {
    const message = newDraft("message", { text: "twice" });
    const [first, second] = await Promise.all([
      append(storage, { draft: message }),
      append(storage, { draft: message }),
    ]);
    expect(second).toStrictEqual(first);
    expect(await outbox()).toStrictEqual([1]);
  });

  test("gets numbers in turn when several are recorded at once", async () => {
    await Promise.all(
      ["a", "b", "c"].map((text) => append(storage, { draft: newDraft("message", { text }) })),
    );
    expect(await outbox()).toStrictEqual([1, 2, 3]);
  });

  test("pins the sheet that its session begins with, in the same transaction", async () => {
    await append(storage, { draft: newDraft("session.started", {}, IN_SHEET), begins: SHEET });
    const { pins, entries } = await readAll(storage);
    expect(pins).toMatchObject([{ session: "w1-mon", sheet: SHEET, n: entries[0]?.n }]);
  });

  test("is refused where nobody is paired", async () => {
    indexedDB.deleteDatabase("undercroft");
    const fresh = openStorage();
    const fault = await append(fresh, { draft: newDraft("message", { text: "?" }) }).catch(
      (f: unknown) => f,
    );
    expect(fault).toBeInstanceOf(StorageFailed);
    expect((fault as StorageFailed).cause).toBeInstanceOf(NotPaired);
  });
});

describe("a verdict", () => {
  test("takes its own entry out of the outbox and no other", async () => {
    const [, second] = await record(3);
    const id = second?.id ?? "";
    await storage.run("readwrite", (transaction) =>
      settle(transaction, [{ id, status: "stored", position: 7 }], START),
    );
    expect(await outbox()).toStrictEqual([1, 3]);
    const { entries } = await readAll(storage);
    expect(entries.find((kept) => kept.id === id)).toMatchObject({
      verdict: "stored",
      position: 7,
    });
  });

  test("keeps why an entry is held", async () => {
    const [first] = await record(1);
    const problem = { code: "bad-shape", where: "body", what: "?", right: "!" };
    await storage.run("readwrite", (transaction) =>
      settle(transaction, [{ id: first?.id ?? "", status: "held", problem }], START),
    );
    const { entries } = await readAll(storage);
    expect(entries).toMatchObject([{ verdict: "held", problem }]);
    expect(await outbox()).toStrictEqual([]);
  });

  test("for an id that is not here changes nothing", async () => {
    await record(1);
    const settled = await storage.run("readwrite", (transaction) =>
      settle(
        transaction,
        [
          { id: "?", status: "stored" },
          { id: null, status: "held" },
        ],
        START,
      ),
    );
    expect([settled, await outbox()]).toStrictEqual([0, [1]]);
  });
});

describe("what the server has lost", () => {
  test("goes back into the outbox, above the number up to which the server has all", async () => {
    const all = await record(4);
    await storage.run("readwrite", async (transaction) => {
      const verdicts = all.map(({ id }) => ({ id, status: "stored" as const, position: 1 }));
      await settle(transaction, verdicts, START);
      await sendAgain(transaction, "device-1", 2);
    });
    expect(await outbox()).toStrictEqual([3, 4]);
    const { entries } = await readAll(storage);
    expect(entries.filter((kept) => kept.outbox).every((kept) => !kept.verdict)).toBe(true);
  });
});

describe("what has been acknowledged", () => {
  test("stays for 30 days by the server's clock, and what has not stays for ever", async () => {
    const [first, second] = await record(3);
    await append(storage, { draft: newDraft("session.started", {}, IN_SHEET), begins: SHEET });
    await storage.run("readwrite", async (transaction) => {
      await settle(transaction, [{ id: first?.id ?? "", status: "stored" }], START);
      await settle(transaction, [{ id: second?.id ?? "", status: "stored" }], START + DAY_MS);
      await forgetOld(transaction, START + 30 * DAY_MS + 1);
    });
    const { entries, pins } = await readAll(storage);
    expect(new Set(entries.map(({ n }) => n))).toStrictEqual(new Set([2, 3, 4]));
    expect(pins).toHaveLength(1);
  });
});
