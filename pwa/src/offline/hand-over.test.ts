import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";

import { fakePhone, holdTimers, IN_SHEET, newDraft, paired, START } from "../../tests/fakes/phone";
import { createFakeServer, type FakeServer } from "../../tests/fakes/server";
import { handOver } from "./hand-over";
import type { Phone } from "./phone";

let server: FakeServer;
let phone: Phone;

beforeEach(async () => {
  server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  phone = fakePhone({ timers: holdTimers() });
  await paired(phone, server);
});

afterEach(async () => {
  phone.stop();
  await phone.settled();
});

async function recordSet(set: string): Promise<void> {
  const body = { load_kg: 80, reps: 5, rir: 2 };
  await phone.record(newDraft("set.done", body, { ...IN_SHEET, set }));
}

function read(text: string): Record<string, unknown> {
  return JSON.parse(text) as Record<string, unknown>;
}

describe("the hand-over file", () => {
  test("does not exist where everything was sent", () => {
    expect(handOver(phone.state(), START)).toBeNull();
  });

  test("holds what waits exactly as it would be sent, and whose it is", async () => {
    await recordSet("a-1");
    await recordSet("a-2");
    const file = handOver(phone.state(), START);
    const { entries, device, identity } = { ...phone.state(), device: server.device };
    expect(read(file?.text ?? "")).toMatchObject({
      format: "undercroft hand-over",
      v: 1,
      device,
      epoch: "epoch-1",
      athlete: identity?.athlete,
      count: 2,
      entries: entries.map(({ entry }) => entry),
    });
    expect(file?.name).toBe("undercroft-osk-venner-2026-02-03.json");
  });

  test("has one entry a line, so that a damaged file loses that line only", async () => {
    await recordSet("a-1");
    await recordSet("a-2");
    const lines = (handOver(phone.state(), START)?.text ?? "").split("\n");
    const sets = lines.slice(2, -2).map((line) => read(line.replace(/,$/, "")).set);
    expect(sets).toStrictEqual(["a-1", "a-2"]);
  });

  test("holds no secret and nothing of the program", async () => {
    await recordSet("a-1");
    const names = Object.keys(read(handOver(phone.state(), START)?.text ?? ""));
    expect(names).toStrictEqual([
      "format",
      "v",
      "device",
      "epoch",
      "athlete",
      "made_at",
      "count",
      "entries",
    ]);
  });

  test("numbers what the storage has not taken after what it has", async () => {
    await recordSet("a-1");
    const draft = newDraft("message", { text: "not stored" });
    const state = { ...phone.state(), unsaved: [{ draft, failed: true }] };
    const { entries } = read(handOver(state, START)?.text ?? "") as { entries: { n: number }[] };
    expect(entries.map(({ n }) => n)).toStrictEqual([1, 2]);
  });
});
