// @vitest-environment node
import { beforeEach, describe, expect, test, vi } from "vitest";

import { exchanged, fakePhone, newDraft, paired } from "../../tests/fakes/phone";
import { arrived, say, unsent } from "../../tests/fakes/messages";
import { createFakeServer, type FakeServer, json, problem } from "../../tests/fakes/server";
import type { Phone } from "./phone";

let server: FakeServer;
let phone: Phone;

beforeEach(async () => {
  server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  phone = fakePhone();
  await paired(phone, server);
});

describe("an exchange", () => {
  test("hands over what waits, in the order of its numbers", async () => {
    await say(phone, "one", "two", "three");
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([["one", "two", "three"], []]);
  });

  test("with nothing to say is one request", async () => {
    const before = server.asked.length;
    await exchanged(phone);
    expect(server.asked.slice(before)).toMatchObject([{ path: "/sync", body: { entries: [] } }]);
  });

  test("of one batch is one request as well", async () => {
    const before = server.asked.length;
    await say(phone, "one");
    await exchanged(phone);
    expect(server.asked.length - before).toBe(1);
  });

  test("brings the feed, the newest of each kind and key", async () => {
    server.publish("kit", "", { name: "old" });
    server.publish("kit", "", { name: "new" });
    await exchanged(phone);
    expect(phone.state().feed).toMatchObject([{ kind: "kit", body: { name: "new" } }]);
  });

  test("fetches a feed of many pages to its end", async () => {
    server.mostItems = 2;
    for (let index = 0; index < 7; index += 1) server.publish("message", `m${index}`, {});
    await exchanged(phone);
    expect(phone.state().feed).toHaveLength(7);
  });

  test.each(["sheet", "tracker"])("takes back a %s that was withdrawn", async (kind) => {
    const at = "2026-02-01T10:00:00Z";
    server.publish(kind, "w1-mon", { lift: "squat", kg: 100, low_kg: 95, high_kg: 108, at });
    await exchanged(phone);
    server.publish(`${kind}.withdrawn`, "w1-mon", {});
    await exchanged(phone);
    expect(phone.state().feed).toStrictEqual([]);
  });

  test("keeps every state of a tracker for the trend", async () => {
    for (const [at, kg] of [
      ["2026-02-01T10:00:00Z", 100],
      ["2026-02-08T10:00:00Z", 102],
    ] as const) {
      server.publish("tracker", "squat", { lift: "squat", kg, low_kg: 95, high_kg: 108, at });
      await exchanged(phone);
    }
    expect(phone.state().trend.map(({ kg }) => kg)).toStrictEqual([100, 102]);
  });

  test("sends 3,000 entries of three weeks offline in batches that the server takes", async () => {
    await Promise.all(
      Array.from({ length: 3_000 }, (_, index) =>
        phone.record(newDraft("message", { text: `${index}` })),
      ),
    );
    await exchanged(phone);
    expect([new Set(arrived(server)).size, unsent(phone)]).toStrictEqual([3_000, []]);
    expect(server.asked.every(({ body }) => JSON.stringify(body).length < 256 * 1024)).toBe(true);
  });
});

describe("an answer that is lost after the server has stored", () => {
  test("doubles nothing: the entry is sent again and is a duplicate", async () => {
    await say(phone, "one");
    const { fetch } = server;
    vi.stubGlobal("fetch", async (address: string, init?: RequestInit) => {
      await fetch(address, init);
      throw new TypeError("the network is gone");
    });
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([["one"], ["one"]]);
    vi.stubGlobal("fetch", fetch);
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([["one"], []]);
  });
});

describe("what counts as no answer", () => {
  const PAGE = "<html>Welcome to the hut's network. Please accept our terms.</html>";
  const answers: [string, () => Response][] = [
    ["a captive portal's page with 200", () => new Response(PAGE, { status: 200 })],
    ["JSON without our header", () => new Response("{}", { status: 200 })],
    ["a body that was cut short", () => new Response('{"verd', { headers: { Undercroft: "1" } })],
    ["a proxy's 502", () => new Response("bad gateway", { status: 502 })],
  ];

  test.each(answers)("%s", async (_, answer) => {
    await say(phone, "one");
    server.answerNext("/sync", answer);
    await exchanged(phone);
    expect(phone.state().sync.last).toStrictEqual({ is: "failed", why: "no answer" });
    expect([arrived(server), unsent(phone)]).toStrictEqual([[], ["one"]]);
  });
});

describe("no status takes an entry out of the outbox", () => {
  test.each([401, 403])("%i asks to pair again and keeps all", async (status) => {
    await say(phone, "one");
    server.answerNext("/sync", () => problem(status));
    server.answerNext("/sync", () => problem(status));
    await exchanged(phone);
    expect(phone.state().identity?.refused).toBe(true);
    expect(unsent(phone)).toStrictEqual(["one"]);
  });

  test("an athlete who was erased keeps all on the phone, and is told", async () => {
    await say(phone, "one");
    const body = JSON.stringify({ type: "urn:undercroft:problem:erased", status: 401 });
    const gone = () => new Response(body, { status: 401, headers: { Undercroft: "1" } });
    server.answerNext("/sync", gone);
    server.answerNext("/sync", gone);
    await exchanged(phone);
    expect(phone.state().identity).toMatchObject({ refused: true, erased: true });
    expect(unsent(phone)).toStrictEqual(["one"]);
  });

  test.each([429, 503])("%i leaves the server alone for as long as it asks", async (status) => {
    await say(phone, "one");
    server.answerNext("/sync", () => problem(status, { "Retry-After": "120" }));
    await exchanged(phone);
    expect(phone.state().sync.last).toStrictEqual({ is: "busy", waitMs: 120_000 });
    expect(unsent(phone)).toStrictEqual(["one"]);
  });

  test.each([404, 418, 500])("%i is tried again later", async (status) => {
    await say(phone, "one");
    server.answerNext("/sync", () => problem(status));
    await exchanged(phone);
    expect(phone.state().sync.last).toStrictEqual({ is: "failed", why: "not taken" });
    expect(unsent(phone)).toStrictEqual(["one"]);
  });

  test("413 halves the batch until the server takes it", async () => {
    await say(phone, "one", "two", "three", "four", "five");
    server.mostEntries = 2;
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([
      ["one", "two", "three", "four", "five"],
      [],
    ]);
  });

  test.each([400, 409, 422])("%i for a whole batch blocks none of its entries", async (status) => {
    await say(phone, "one", "two", "three");
    server.answerNext("/sync", () => problem(status));
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([["one", "two", "three"], []]);
  });

  test("one entry that can never be taken blocks none behind it, and stays", async () => {
    await say(phone, "poison", "two", "three");
    const { fetch } = server;
    vi.stubGlobal("fetch", (address: string, init?: RequestInit) =>
      JSON.stringify(init?.body).includes("poison")
        ? Promise.resolve(problem(422))
        : fetch(address, init),
    );
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([["two", "three"], ["poison"]]);
    expect(phone.state().sync.last).toStrictEqual({ is: "failed", why: "not taken" });
  });

  test("an answer without verdicts settles nothing and is not asked for in a circle", async () => {
    await say(phone, "one");
    const empty = { epoch: "epoch-1", verdicts: [], stored_through: 0, feed: [], cursor: 0 };
    server.answerNext("/sync", () => json({ ...empty, server_time: 0 }));
    await exchanged(phone);
    expect([phone.state().sync.last, unsent(phone)]).toStrictEqual([
      { is: "failed", why: "not taken" },
      ["one"],
    ]);
  });
});

describe("an entry that is held", () => {
  test("leaves the outbox with its reason, and blocks none behind it", async () => {
    await phone.record({ ...newDraft("message", { text: "" }), body: { bad: true } });
    await say(phone, "two");
    await exchanged(phone);
    expect(phone.state().entries).toMatchObject([
      { verdict: "held", problem: { code: "bad-shape" } },
      { verdict: "stored" },
    ]);
  });
});
