import { afterEach, beforeEach, expect, test, vi } from "vitest";

import { fakePhone, holdTimers, newDraft, paired, SHEET, START } from "../../../tests/fakes/phone";
import { createFakeServer } from "../../../tests/fakes/server";
import type { Phone } from "../../offline/phone";
import type { App } from "../app-context";
import { unsentOf } from "../sync/sync-words";
import { tellOpened } from "./opened";
import { planOf } from "./plan";

const REVISION = { number: 1, block_name: "Base", sent_at: 0, sessions: [] };

let phone: Phone;
let app: App;

beforeEach(async () => {
  const server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  const timers = holdTimers();
  phone = fakePhone({ timers });
  await paired(phone, server);
  app = { phone, clock: timers } as unknown as App;
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

function told(): (number | null)[] {
  const { entries } = phone.state();
  return entries.flatMap(({ entry }) => (entry.kind === "session.opened" ? entry.revision : []));
}

test("that a session was opened is told once", async () => {
  await tellOpened(app, SHEET);
  expect(told()).toEqual([1]);
  await tellOpened(app, SHEET);
  expect(told()).toEqual([1]);
});

test("a session that was sent again is opened anew", async () => {
  await tellOpened(app, SHEET);
  await tellOpened(app, { ...SHEET, revision: 2 });
  expect(told()).toEqual([1, 2]);
});

test("a page that nobody sees opens nothing", async () => {
  vi.spyOn(document, "visibilityState", "get").mockReturnValue("hidden");
  await tellOpened(app, SHEET);
  expect(told()).toEqual([]);
});

test("to look at a session neither begins it nor hides what is new in it", async () => {
  await tellOpened(app, SHEET);
  const item = (kind: string, key: string, body: unknown) => ({ position: 1, kind, key, body });
  const feed = [item("revision", "1", REVISION), item("sheet", SHEET.session, SHEET)];
  const plan = planOf({ ...phone.state(), feed }, null, START);
  expect(plan.open.map(({ session }) => session)).toEqual([SHEET.session]);
  expect(plan.isNew).toBe(true);
});

test("it is no work that waits to be sent", async () => {
  vi.stubGlobal("fetch", () => Promise.reject(new TypeError("no network")));
  await tellOpened(app, SHEET);
  await phone.record(newDraft("session.started", {}, { revision: 1, session: SHEET.session }));
  expect(unsentOf(phone.state()).map(({ entry }) => entry.kind)).toEqual(["session.started"]);
});
