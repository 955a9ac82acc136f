import { computed, signal } from "@preact/signals";
import { afterEach, beforeEach, expect, test, vi } from "vitest";

import { fakeCaches, type FakeCaches } from "../../../tests/fakes/caches";
import {
  exchanged,
  fakePhone,
  holdTimers,
  newDraft,
  paired,
  SHEET,
} from "../../../tests/fakes/phone";
import { createFakeServer, type FakeServer } from "../../../tests/fakes/server";
import { sessionsBegun } from "../../offline/ledger-view";
import type { Phone } from "../../offline/phone";
import { PICTURES } from "../../offline/picture-cache";
import type { App } from "../app-context";
import { keepPictures } from "./keep-pictures";

const REVISION = { number: 1, block_name: "Base", sent_at: 0, sessions: [{ session: "w1-mon" }] };
const SQUAT = { hash: "a1", media: "image/webp", bytes: 3, words: "Bar over mid-foot" };
const ROW = { hash: "b2", media: "image/webp", bytes: 3, words: "Elbow to the hip" };

const PICTURES_OF_COACH = { "back-squat": SQUAT, "dumbbell-row": ROW };

let server: FakeServer;
let phone: Phone;
let caches: FakeCaches;
let stop: () => void;

beforeEach(async () => {
  server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  caches = fakeCaches();
  vi.stubGlobal("caches", caches);
  const timers = holdTimers();
  phone = fakePhone({ timers });
  server.publish("revision", "1", REVISION);
  server.publish("sheet", SHEET.session, SHEET);
  server.publish("pictures", "", PICTURES_OF_COACH);
  for (const { hash } of [SQUAT, ROW]) {
    server.answerNext(`/pictures/${hash}`, () => {
      return new Response("abc", { headers: { Undercroft: "1" } });
    });
  }
  const state = signal(phone.state());
  phone.subscribe(() => (state.value = phone.state()));
  const sessions = computed(() => sessionsBegun(state.value));
  stop = keepPictures({ phone, state, sessions, clock: timers } as unknown as App);
});

afterEach(() => {
  stop();
  vi.unstubAllGlobals();
});

function paths(): string[] {
  return server.asked.map(({ path }) => path);
}

function hasEntries(body: unknown): boolean {
  return (body as { entries: unknown[] }).entries.length > 0;
}

const kept = () => caches.kept(PICTURES);

test("pictures of sessions ahead come by themselves, and no others", async () => {
  await paired(phone, server);
  await vi.waitFor(() => expect(kept()).toStrictEqual(["/api/v1/pictures/a1"]));
  await exchanged(phone);
  expect(paths().filter((path) => path.startsWith("/pictures"))).toStrictEqual(["/pictures/a1"]);
});

test("what was recorded is sent before any picture is asked for", async () => {
  server.publish("pictures", "", {});
  await paired(phone, server);
  server.publish("pictures", "", PICTURES_OF_COACH);
  await phone.record(newDraft("message", { text: "cold today" }));
  await exchanged(phone);
  await vi.waitFor(() => expect(kept()).toHaveLength(1));
  const sent = server.asked.findIndex(({ path, body }) => path === "/sync" && hasEntries(body));
  expect(sent).toBeGreaterThan(0);
  expect(paths().indexOf("/pictures/a1")).toBeGreaterThan(sent);
});

test("a picture that the coach has taken back goes with the next exchange", async () => {
  await paired(phone, server);
  await vi.waitFor(() => expect(kept()).toHaveLength(1));
  server.publish("pictures", "", {});
  await exchanged(phone);
  await vi.waitFor(() => expect(kept()).toHaveLength(0));
});

test("a phone that is asked to save data asks for none", async () => {
  vi.stubGlobal("navigator", { connection: { saveData: true } });
  await paired(phone, server);
  await exchanged(phone);
  expect(paths()).not.toContain("/pictures/a1");
});
