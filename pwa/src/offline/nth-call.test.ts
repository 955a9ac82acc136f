// @vitest-environment node
/**
 * One fixed scenario, run again and again: the first, the second, the third … call of the storage or
 * the network fails, once or from then on, before or after it took effect, until a run makes fewer
 * calls. After healing, each tap that the screen confirmed is on the server exactly once, and phone
 * and server fold to the same state.
 */
import { IDBFactory } from "fake-indexeddb";
import { describe, expect, test, vi } from "vitest";

import { exchanged, fakePhone, IN_SHEET, newDraft, paired, SHEET } from "../../tests/fakes/phone";
import { createFakeServer, type FakeServer } from "../../tests/fakes/server";
import type { Draft } from "./entry";
import { fold } from "./fold";
import { placed } from "./ledger-view";
import type { Phone } from "./phone";
import { openStorage, type Storage, StorageFailed } from "./storage";

type Kind = "storage" | "network";

interface Fault {
  readonly kind: Kind;
  /** Which call of its kind, from 1. */
  readonly at: number;
  readonly lasting: boolean;
  /** The effect took place, and only the word of it was lost. */
  readonly after: boolean;
}

interface Breaker {
  readonly calls: Record<Kind, number>;
  readonly heal: () => void;
  readonly through: <T>(kind: Kind, work: () => Promise<T>, fault: () => Error) => Promise<T>;
}

function breaker(fault: Fault | null): Breaker {
  const calls = { storage: 0, network: 0 };
  let healed = false;
  return {
    calls,
    heal: () => {
      healed = true;
    },
    async through(kind, work, error) {
      calls[kind] += 1;
      const hit = fault?.kind === kind && !healed;
      const due = hit && (fault.lasting ? calls[kind] >= fault.at : calls[kind] === fault.at);
      if (due && !fault.after) throw error();
      const result = await work();
      if (due) throw error();
      return result;
    },
  };
}

function breakingStorage(through: Breaker["through"]): Storage {
  const inner = openStorage();
  const failed = () => new StorageFailed("the storage does not answer");
  return {
    run: (mode, work) => through("storage", () => inner.run(mode, work), failed),
    close: () => inner.close(),
  };
}

const set = (key: string) => ({ ...IN_SHEET, set: key });
const done = (reps: number) => ({ load_kg: 80, reps, rir: 2 });

/** Taps that the screen confirmed as saved on this phone. */
async function train(phone: Phone, server: FakeServer): Promise<Draft[]> {
  const confirmed: Draft[] = [];
  const tap = async (draft: Draft, begins?: typeof SHEET) => {
    if (await phone.record(draft, begins)) confirmed.push(draft);
    return draft;
  };
  await exchanged(phone);
  await tap(newDraft("session.started", {}, IN_SHEET), SHEET);
  const first = await tap(newDraft("set.done", done(5), set("a-1")));
  await exchanged(phone);
  await tap(newDraft("set.done", done(6), { ...set("a-1"), replaces: first.id }));
  await tap(newDraft("set.done", done(5), set("a-2")));
  server.publish("revision", "2", { number: 2, block_name: "Block", sessions: [] });
  await exchanged(phone);
  await tap(newDraft("set.skipped", { why: "no time" }, set("a-3")));
  await tap(newDraft("session.finished", { rpe: 7, minutes: 40 }, IN_SHEET));
  await exchanged(phone);
  return confirmed;
}

async function runWith(fault: Fault | null): Promise<Record<Kind, number>> {
  vi.stubGlobal("indexedDB", new IDBFactory());
  const server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  // Pairing is an act of its own, which the athlete sees fail; the faults begin after it.
  const pairing = fakePhone();
  await paired(pairing, server);
  pairing.stop();

  const { calls, heal, through } = breaker(fault);
  const lost = () => new TypeError("no network");
  vi.stubGlobal("fetch", (address: string, init?: RequestInit) =>
    through("network", () => server.fetch(address, init), lost),
  );
  const phone = fakePhone({ storage: breakingStorage(through) });
  await phone.load();
  const confirmed = await train(phone, server);
  const made = { ...calls };
  heal();
  await phone.retry();
  await exchanged(phone);
  claim(phone, server, confirmed);
  return made;
}

function claim(phone: Phone, server: FakeServer, confirmed: readonly Draft[]): void {
  const stored = server.stored();
  const ids = stored.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { id } of confirmed) expect(ids).toContain(id);
  const state = phone.state();
  expect(state.unsaved).toStrictEqual([]);
  expect(state.entries.filter((kept) => kept.outbox)).toStrictEqual([]);
  expect(fold(placed(state).map(({ entry }) => entry))).toStrictEqual(fold(stored));
  const numbers = stored.map(({ n }) => n).sort((one, other) => one - other);
  expect(numbers).toStrictEqual(numbers.map((_, index) => index + 1));
}

describe("the n-th call", () => {
  test("without a fault every tap is confirmed and arrives", async () => {
    const calls = await runWith(null);
    expect(calls.storage).toBeGreaterThan(15);
    expect(calls.network).toBeGreaterThan(3);
  });

  const cases = (["storage", "network"] as const).flatMap((kind) =>
    [false, true].flatMap((lasting) => [false, true].map((after) => ({ kind, lasting, after }))),
  );

  test.each(cases)("$kind fails, lasting: $lasting, after its effect: $after", async (fault) => {
    for (let at = 1; ; at += 1) {
      const calls = await runWith({ ...fault, at });
      if (calls[fault.kind] < at) break;
    }
    expect.hasAssertions();
  });
});
