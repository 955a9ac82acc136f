// @vitest-environment node
import { beforeEach, describe, expect, test, vi } from "vitest";

import { createFakeServer, type FakeServer, problem } from "../../tests/fakes/server";
import { get, post } from "../api/client";
import { accept, deviceName, unpair } from "./pairing";

const ask = { get, post };
const WAY = { code: "ABCD2345" };

let server: FakeServer;

beforeEach(() => {
  server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
});

describe("accepting an invitation", () => {
  test("gives the phone its device id and its athlete", async () => {
    const paired = await accept(ask, WAY, "iPhone", null);
    expect(paired).toMatchObject({ device: "device-1", athlete: { name: "Osk Venner" } });
    expect(server.asked[0]?.body).toStrictEqual({ ...WAY, device_name: "iPhone" });
  });

  test("whose answer was lost is found out by a snapshot, the cookie being here already", async () => {
    server.answerNext("/pairing/accept", () => problem(404));
    await expect(accept(ask, WAY, "iPhone", null)).resolves.toMatchObject({ device: "device-1" });
  });

  test("that is used up is refused, also where the phone was paired before", async () => {
    server.answerNext("/pairing/accept", () => problem(404));
    await expect(accept(ask, WAY, "iPhone", "device-1")).rejects.toThrow("refused");
  });

  test("too often is not taken for a lost answer", async () => {
    server.answerNext("/pairing/accept", () => problem(429));
    await expect(accept(ask, WAY, "iPhone", null)).rejects.toThrow("refused");
    expect(server.asked).toHaveLength(1);
  });
});

describe("unpairing", () => {
  test("a phone that the server does not know any more is done already", async () => {
    server.answerNext("/unpair", () => problem(401));
    await expect(unpair(ask)).resolves.toBeUndefined();
  });

  test("without an answer is said", async () => {
    vi.stubGlobal("fetch", () => Promise.reject(new TypeError("no network")));
    await expect(unpair(ask)).rejects.toThrow("did not answer");
  });
});

describe("the name that the coach sees", () => {
  test.each([
    ["Mozilla/5.0 (iPhone; CPU iPhone OS 17_0 like Mac OS X)", "iPhone"],
    ["Mozilla/5.0 (Linux; Android 14; Pixel) Mobile Safari/537.36", "Android phone"],
    ["Mozilla/5.0 (X11; Linux x86_64)", "Linux computer"],
    ["something else", "A phone"],
  ])("of %s", (agent, name) => {
    expect(deviceName(agent)).toBe(name);
  });
});
