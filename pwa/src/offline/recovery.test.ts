// @vitest-environment node
import { beforeEach, describe, expect, test, vi } from "vitest";

import { exchanged, fakePhone, holdTimers, paired } from "../../tests/fakes/phone";
import { arrived, say, unsent } from "../../tests/fakes/messages";
import { createFakeServer, type FakeServer, json } from "../../tests/fakes/server";
import type { Phone } from "./phone";

let server: FakeServer;
let phone: Phone;

beforeEach(async () => {
  server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  phone = fakePhone();
  await paired(phone, server);
});

describe("a database restored from a backup", () => {
  test("gets everything again that the phone still holds", async () => {
    await say(phone, "one", "two", "three");
    await exchanged(phone);
    server.restore(1);
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([["one", "two", "three"], []]);
    expect(phone.state().identity?.epoch).toBe("epoch-1+");
  });

  test("gets it from a phone that was unpaired since, too", async () => {
    await say(phone, "one", "two", "three");
    await exchanged(phone);
    server.restore(1);
    server.revoke();
    await exchanged(phone);
    expect(server.lines.map(({ entry }) => entry.body)).toHaveLength(3);
    expect(unsent(phone)).toStrictEqual([]);
  });

  test("without a new epoch is told by what it has stored", async () => {
    await say(phone, "one", "two", "three");
    await exchanged(phone);
    server.lines.splice(1);
    await exchanged(phone);
    expect([arrived(server), unsent(phone)]).toStrictEqual([["one", "two", "three"], []]);
  });
});

describe("a copy of this phone, as after a backup of it was put back", () => {
  test("has used its numbers: it takes a new device id and goes on", async () => {
    await say(phone, "one");
    await exchanged(phone);
    const line = server.lines[0];
    if (line) server.lines[0] = { ...line, entry: { ...line.entry, id: "of-the-copy", n: 2 } };
    await say(phone, "two", "three");
    await exchanged(phone);
    expect(phone.state().identity?.device).toBe("device-1+");
    await say(phone, "four");
    await exchanged(phone);
    expect(unsent(phone)).toStrictEqual([]);
    expect(arrived(server)).toContain("four");
    expect(phone.state().entries.filter(({ verdict }) => verdict === "held")).toHaveLength(1);
  });

  test("finds its new id out when the answer that told it was lost", async () => {
    await say(phone, "one");
    server.device = "device-1+";
    await exchanged(phone);
    expect(phone.state().identity?.device).toBe("device-1+");
    expect([arrived(server), unsent(phone)]).toStrictEqual([["one"], []]);
  });
});

describe("a device that was revoked", () => {
  test("hands over what it has for the coach to accept, and asks to pair again", async () => {
    await say(phone, "one");
    server.revoke();
    await exchanged(phone);
    expect(phone.state().entries).toMatchObject([{ verdict: "held" }]);
    expect(phone.state().identity?.refused).toBe(true);
    expect(phone.state().sync.last).toStrictEqual({ is: "refused" });
  });
});

describe("pairing again", () => {
  test("takes over what was not sent, and doubles nothing of what was", async () => {
    await say(phone, "stored, but the answer was lost", "not sent");
    const [first] = phone.state().entries;
    if (first) {
      server.lines.push({ entry: first.entry, device: "device-1", position: 1, status: "stored" });
    }
    server.device = "device-2";
    await phone.takePairing({
      device: "device-2",
      athlete: { id: "athlete-1", name: "Osk Venner" },
      coach: "Ida Moor",
      epoch: "epoch-1",
      cursor: 0,
    });
    await exchanged(phone);
    expect(arrived(server)).toStrictEqual(["stored, but the answer was lost", "not sent"]);
    expect(unsent(phone)).toStrictEqual([]);
  });

  test("as another athlete never sends the first one's entries in that one's name", async () => {
    await say(phone, "of the first");
    server.device = "device-2";
    await phone.takePairing({
      device: "device-2",
      athlete: { id: "athlete-2", name: "Runa Stad" },
      coach: "Ida Moor",
      epoch: "epoch-1",
      cursor: 0,
    });
    vi.stubGlobal("fetch", async (address: string, init?: RequestInit) => {
      const answer = await server.fetch(address, init);
      if (!address.includes("snapshot")) return answer;
      const body = (await answer.json()) as object;
      return json({ ...body, athlete: { id: "athlete-2", name: "Runa Stad" } });
    });
    await exchanged(phone);
    expect(arrived(server)).toStrictEqual([]);
    expect(unsent(phone)).toStrictEqual(["of the first"]);
  });

  test("as another athlete leaves no half-answered screening behind, as the same one it does", async () => {
    const answers = { smoking: "yes" };
    await phone.saveSettings({ screening: answers });
    const facts = { coach: "Ida Moor", epoch: "epoch-1", cursor: 0 };
    const osk = { id: "athlete-1", name: "Osk Venner" };
    await phone.takePairing({ ...facts, device: "device-2", athlete: osk });
    expect(phone.state().settings.screening).toStrictEqual(answers);
    const runa = { id: "athlete-2", name: "Runa Stad" };
    await phone.takePairing({ ...facts, device: "device-3", athlete: runa });
    expect(phone.state().settings.screening).toBeUndefined();
  });
});

describe("the two clocks", () => {
  test("are compared at every answer", async () => {
    const timers = holdTimers();
    const slow = fakePhone({ timers });
    server.now = timers.now() + 12 * 60_000;
    await slow.load();
    await exchanged(slow);
    expect(slow.state().notes.clockOff).toBe(12 * 60_000);
  });
});
