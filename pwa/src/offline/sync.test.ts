// @vitest-environment node
import { beforeEach, describe, expect, test, vi } from "vitest";

import { fakePhone, type HeldTimers, holdTimers, newDraft, paired } from "../../tests/fakes/phone";
import { createFakeServer, type FakeServer, problem } from "../../tests/fakes/server";
import type { Phone } from "./phone";
import { DEBOUNCE_MS, SLOW_TIMER_MS } from "./sync";

let server: FakeServer;
let timers: HeldTimers;
let phone: Phone;

beforeEach(async () => {
  server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  timers = holdTimers();
  phone = fakePhone({ timers });
  await paired(phone, server);
  server.asked.length = 0;
});

function gone(): void {
  vi.stubGlobal("fetch", (address: string) => {
    server.asked.push({ path: address, body: null });
    return Promise.reject(new TypeError("no network"));
  });
}

async function pass(ms: number): Promise<number> {
  const before = server.asked.length;
  timers.pass(ms);
  await phone.settled();
  return server.asked.length - before;
}

async function poke(...occasions: Parameters<Phone["poke"]>): Promise<number> {
  const before = server.asked.length;
  phone.poke(...occasions);
  await phone.settled();
  return server.asked.length - before;
}

function say(text: string): Promise<boolean> {
  return phone.record(newDraft("message", { text }));
}

describe("when the phone talks to the server", () => {
  test("entries that follow each other quickly go together", async () => {
    await say("one");
    await pass(DEBOUNCE_MS - 1);
    await say("two");
    expect(await pass(DEBOUNCE_MS - 1)).toBe(0);
    expect(await pass(1)).toBe(1);
    expect(server.stored()).toHaveLength(2);
  });

  test.each(["start", "visible", "online", "asked", "worker"] as const)(
    "at once on: %s",
    async (occasion) => {
      expect(await poke(occasion)).toBe(1);
    },
  );

  test("now and then while it is in view, and not while it is hidden", async () => {
    phone.watch(true);
    expect(await pass(SLOW_TIMER_MS)).toBe(1);
    expect(await pass(SLOW_TIMER_MS)).toBe(1);
    phone.watch(false);
    expect(await pass(SLOW_TIMER_MS * 3)).toBe(0);
  });

  test("no more once it is stopped", async () => {
    phone.stop();
    expect(await poke("asked")).toBe(0);
  });
});

describe("after a failure", () => {
  test("it waits longer each time, from 2 s on", async () => {
    gone();
    await poke("asked");
    const waits: number[] = [];
    for (let failure = 0; failure < 5; failure += 1) {
      const [wait = 0] = timers.waiting();
      waits.push(wait);
      await pass(wait);
    }
    // Half of the time is left to chance; the fake chance is in the middle.
    expect(waits).toStrictEqual([2_000, 3_000, 6_000, 12_000, 24_000]);
  });

  test("a new entry does not shorten the wait", async () => {
    gone();
    await poke("asked");
    await pass(2_000);
    const before = timers.waiting();
    await say("one");
    expect(timers.waiting()).toStrictEqual(before);
  });

  test.each(["online", "visible"] as const)("%s begins anew", async (occasion) => {
    gone();
    await poke("asked");
    for (let failure = 0; failure < 4; failure += 1) await pass(timers.waiting()[0] ?? 0);
    expect(await poke(occasion)).toBe(1);
    expect(timers.waiting()).toStrictEqual([2_000]);
  });

  test("it says when it tries again", async () => {
    gone();
    await poke("asked");
    expect(phone.state().sync).toStrictEqual({
      running: false,
      last: { is: "failed", why: "no answer" },
      nextAt: timers.now() + 2_000,
    });
  });
});

describe("a server that asks for patience", () => {
  beforeEach(async () => {
    server.answerNext("/sync", () => problem(429, { "Retry-After": "90" }));
    await poke("asked");
  });

  test("is left alone for that long, whatever happens meanwhile", async () => {
    expect(await poke("online")).toBe(0);
    await say("one");
    expect(await pass(89_000)).toBe(0);
    expect(await pass(1_000)).toBe(1);
    expect(server.stored()).toHaveLength(1);
  });

  test("cannot silence a phone for days", async () => {
    server.answerNext("/sync", () => problem(503, { "Retry-After": "999999" }));
    await pass(90_000);
    await poke("online");
    expect(timers.waiting()[0]).toBe(3_600_000);
  });
});

describe("two occasions at once", () => {
  test("are one exchange, and another one after it", async () => {
    const { fetch } = server;
    let finish = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      finish = resolve;
    });
    vi.stubGlobal("fetch", (address: string, init?: RequestInit) =>
      held.then(() => fetch(address, init)),
    );
    phone.poke("asked");
    await vi.waitFor(() => expect(phone.state().sync.running).toBe(true));
    phone.poke("visible");
    phone.poke("online");
    finish();
    await phone.settled();
    expect(server.asked).toHaveLength(2);
  });

  test("try again at once where the network came back during a round that failed", async () => {
    const { fetch } = server;
    let fail = (): void => undefined;
    const failing = new Promise<Response>((_, reject) => {
      fail = () => reject(new TypeError("no network"));
    });
    const asked = vi.fn(() => failing);
    vi.stubGlobal("fetch", asked);
    phone.poke("asked");
    await vi.waitFor(() => expect(asked).toHaveBeenCalled());
    phone.poke("online");
    vi.stubGlobal("fetch", fetch);
    fail();
    await phone.settled();
    expect(phone.state().sync.last).toStrictEqual({ is: "done" });
  });
});
