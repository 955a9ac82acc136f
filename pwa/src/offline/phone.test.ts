// @vitest-environment node
import { beforeEach, describe, expect, test, vi } from "vitest";

import {
  exchanged,
  fakePhone,
  holdTimers,
  IN_SHEET,
  newDraft,
  paired,
  SHEET,
} from "../../tests/fakes/phone";
import { createFakeServer, type FakeServer } from "../../tests/fakes/server";
import { isOver, sessionsBegun, underWay } from "./ledger-view";
import type { Phone } from "./phone";
import { SHOWN_AFTER_MS } from "./recorder";
import { openStorage, type Storage, StorageFailed } from "./storage";

let server: FakeServer;

beforeEach(() => {
  server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
});

const DONE = { load_kg: 80, reps: 5, rir: 2 };
const SET = { ...IN_SHEET, set: "a-1" };

/** A storage that can be made to fail. */
function fragile(): Storage & { broken: boolean } {
  const inner = openStorage();
  const storage: Storage & { broken: boolean } = {
    broken: false,
    run(mode, work) {
      if (storage.broken) return Promise.reject(new StorageFailed("full"));
      return inner.run(mode, work);
    },
    close: () => inner.close(),
  };
  return storage;
}

async function start(phone: Phone): Promise<void> {
  await phone.record(newDraft("session.started", {}, IN_SHEET), SHEET);
}

describe("a tap", () => {
  test("is saved on this phone before it counts", async () => {
    const phone = fakePhone();
    await paired(phone, server);
    const saved = phone.record(newDraft("set.done", DONE, SET));
    expect(phone.state().entries).toStrictEqual([]);
    await expect(saved).resolves.toBe(true);
    expect(phone.state().unsaved).toStrictEqual([]);
    expect(phone.state().entries).toMatchObject([{ n: 1, outbox: "device-1" }]);
  });

  test("that takes its time is shown to be on its way", async () => {
    const timers = holdTimers();
    const phone = fakePhone({ timers });
    await paired(phone, server);
    const saved = phone.record(newDraft("set.done", DONE, SET));
    timers.pass(SHOWN_AFTER_MS);
    expect(phone.state().unsaved).toMatchObject([{ failed: false }]);
    await saved;
    expect(phone.state().unsaved).toStrictEqual([]);
  });

  test("twice on the same button is one entry", async () => {
    const phone = fakePhone();
    await paired(phone, server);
    const draft = newDraft("set.done", DONE, SET);
    await Promise.all([phone.record(draft), phone.record(draft)]);
    await phone.record(draft);
    expect(phone.state().entries).toHaveLength(1);
  });

  test("that the storage refuses is kept in memory, said aloud, and saved later", async () => {
    const storage = fragile();
    const phone = fakePhone({ storage });
    await paired(phone, server);
    storage.broken = true;
    await expect(phone.record(newDraft("set.done", DONE, SET))).resolves.toBe(false);
    expect(phone.state().unsaved).toMatchObject([{ failed: true, draft: { set: "a-1" } }]);
    expect(phone.state().fault).toBeInstanceOf(StorageFailed);
    storage.broken = false;
    await phone.retry();
    expect(phone.state()).toMatchObject({ unsaved: [], fault: null, entries: [{ n: 1 }] });
  });

  test("survives the app being killed right after it was saved", async () => {
    const phone = fakePhone();
    await paired(phone, server);
    await start(phone);
    await phone.record(newDraft("set.done", DONE, SET));
    const next = fakePhone();
    await next.load();
    expect(underWay(sessionsBegun(next.state()))?.record.sets.get("a-1")?.entry.body).toStrictEqual(
      DONE,
    );
  });

  test("of the first set asks the browser to keep the storage, once", async () => {
    const persist = vi.fn(() => Promise.resolve(true));
    const phone = fakePhone({ persist });
    await paired(phone, server);
    await start(phone);
    expect(persist).not.toHaveBeenCalled();
    await phone.record(newDraft("set.done", DONE, SET));
    await vi.waitFor(() => expect(phone.state().notes.persisted).toBe(true));
    await phone.record(newDraft("set.done", DONE, { ...SET, set: "a-2" }));
    expect(persist).toHaveBeenCalledOnce();
  });
});

describe("a session under way", () => {
  let phone: Phone;

  beforeEach(async () => {
    phone = fakePhone();
    await paired(phone, server);
    server.publish("sheet", SHEET.session, SHEET);
    await exchanged(phone);
    await start(phone);
  });

  test("stays on the sheet that it began with when the coach sends another", async () => {
    server.publish("sheet", SHEET.session, { ...SHEET, revision: 2, name: "Changed" });
    await exchanged(phone);
    expect(underWay(sessionsBegun(phone.state()))?.sheet).toStrictEqual(SHEET);
  });

  test("stays when the coach withdraws it", async () => {
    server.publish("sheet.withdrawn", SHEET.session, {});
    await exchanged(phone);
    expect(underWay(sessionsBegun(phone.state()))?.sheet).toStrictEqual(SHEET);
  });

  test("is over once it is finished or stopped", async () => {
    await phone.record(newDraft("session.finished", { rpe: 7, minutes: 40 }, IN_SHEET));
    expect(underWay(sessionsBegun(phone.state()))).toBeNull();
    expect(sessionsBegun(phone.state()).map(({ record }) => isOver(record))).toStrictEqual([true]);
  });

  test("goes on when it was stopped by mistake and started again", async () => {
    await phone.record(newDraft("session.stopped", { why: "pain" }, IN_SHEET));
    expect(underWay(sessionsBegun(phone.state()))).toBeNull();
    await phone.record(newDraft("session.started", {}, IN_SHEET));
    expect(underWay(sessionsBegun(phone.state()))?.sheet.session).toBe(SHEET.session);
  });

  test("remembers its warm-up sets through a reload", async () => {
    await phone.saveRamp(SHEET.session, "a", 2);
    const next = fakePhone();
    await next.load();
    expect(underWay(sessionsBegun(next.state()))?.ramp).toStrictEqual({ a: 2 });
  });

  test("folds the sets that the athlete's other phone recorded", async () => {
    const entry = { ...newDraft("set.done", DONE, { ...SET, set: "a-2" }), n: 1 };
    server.lines.push({ entry, device: "other", position: 50, status: "stored" });
    server.publish("message", "m", {});
    await exchanged(phone);
    expect([...(underWay(sessionsBegun(phone.state()))?.record.sets.keys() ?? [])]).toStrictEqual([
      "a-2",
    ]);
  });
});

describe("two tabs", () => {
  test("number their entries without a gap or a double", async () => {
    const one = fakePhone();
    await paired(one, server);
    const other = fakePhone();
    await other.load();
    const say = (phone: Phone, text: string) => phone.record(newDraft("message", { text }));
    await Promise.all(["a", "b", "c"].flatMap((text) => [say(one, text), say(other, text)]));
    await one.load();
    const numbers = one.state().entries.map(({ n }) => n);
    expect(new Set(numbers)).toStrictEqual(new Set([1, 2, 3, 4, 5, 6]));
  });

  test("lose nothing when one reads while the other records", async () => {
    const phone = fakePhone();
    await paired(phone, server);
    const reading = phone.load();
    await phone.record(newDraft("message", { text: "meanwhile" }));
    await reading;
    expect(phone.state().entries).toHaveLength(1);
  });
});

describe("unpairing", () => {
  test("leaves nothing of the athlete on the phone", async () => {
    const phone = fakePhone();
    await paired(phone, server);
    await start(phone);
    await phone.wipe();
    expect(phone.state()).toMatchObject({ identity: null, entries: [], feed: [], pins: [] });
  });
});
