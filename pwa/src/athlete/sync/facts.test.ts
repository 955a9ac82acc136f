import { describe, expect, test } from "vitest";

import { newDraft, START } from "../../../tests/fakes/phone";
import { DAY_MS, MINUTE_MS, stamp } from "../../offline/clock";
import type { Identity, Kept } from "../../offline/database";
import type { Entry } from "../../offline/entry";
import type { PhoneState } from "../../offline/phone";
import { NOTHING } from "../../offline/phone-store";
import { StorageFailed } from "../../offline/storage";
import { type Around, type Fact, factsOf } from "./facts";

const IDENTITY: Identity = {
  device: "device-1",
  athlete: { id: "athlete-1", name: "Osk Venner" },
  coach: "Ida Moor",
  epoch: "epoch-1",
  cursor: 0,
  lastN: 2,
  storedThrough: 0,
};

const CALM: PhoneState = {
  ...NOTHING,
  identity: IDENTITY,
  loaded: true,
  unsaved: [],
  fault: null,
  sync: { running: false, last: { is: "done" }, nextAt: null },
};

const HERE: Around = { now: START, update: false, underWay: false };

/** Two sets that wait since then. */
function unsent(since: number): Kept[] {
  return [1, 2].map((n) => {
    const draft = newDraft("set.done", { load_kg: 80, reps: 5, rir: 2 }, { set: `a-${n}` });
    const entry: Entry = { ...draft, at: stamp(since + n), n };
    const { device, athlete } = IDENTITY;
    return { id: entry.id, athlete: athlete.id, device, n, entry, outbox: device };
  });
}

function facts(state: Partial<PhoneState>, around: Partial<Around> = {}): Fact[] {
  return factsOf({ ...CALM, ...state }, { ...HERE, ...around });
}

function kinds(state: Partial<PhoneState>, around: Partial<Around> = {}): string[] {
  return facts(state, around).map((fact) => fact.is);
}

const NO_ANSWER = { is: "failed", why: "no answer" } as const;

describe("the sync screen", () => {
  test("says nothing where all is well", () => {
    expect(facts({})).toStrictEqual([]);
  });

  test("says offline how much is on this phone only, since when, and when it is tried again", () => {
    const sync = { running: false, last: NO_ANSWER, nextAt: START + MINUTE_MS };
    const [fact] = facts({ entries: unsent(START), sync });
    expect(fact?.is).toBe("offline");
    expect(fact?.what).toMatch(
      /^No answer from the server\. 2 sets on this phone only since today/,
    );
    expect(fact?.todo).toContain("is sent by itself");
    expect(fact?.todo).toContain("tried again at");
  });

  test("says what is being sent", () => {
    const sync = { running: true, last: NO_ANSWER, nextAt: null };
    expect(facts({ entries: unsent(START), sync })[0]).toMatchObject({
      is: "sending",
      what: "Sending 2 sets.",
    });
  });

  test("says where the browser may clear the storage, and what to do", () => {
    expect(facts({ notes: { persisted: false } })[0]?.todo).toContain("home screen");
    expect(kinds({ notes: { persisted: true } })).toStrictEqual([]);
    expect(kinds({ notes: {} })).toStrictEqual([]);
  });

  test("says that the storage is full, what to delete, and to keep the page open", () => {
    const cause = new DOMException("", "QuotaExceededError");
    const fault = new StorageFailed("", { cause });
    const unsaved = [{ draft: newDraft("message", { text: "a" }), failed: true }];
    const [fact] = facts({ fault, unsaved });
    expect(fact?.is).toBe("full");
    expect(fact?.todo).toContain("Keep this page open: 1 entry is here only.");
  });

  test("says where the storage does not answer", () => {
    expect(kinds({ fault: new StorageFailed("") })).toStrictEqual(["silent storage"]);
  });

  test("says that the clock is off beyond five minutes, and up to that nothing", () => {
    expect(kinds({ notes: { clockOff: 5 * MINUTE_MS } })).toStrictEqual([]);
    expect(facts({ notes: { clockOff: 6 * MINUTE_MS } })[0]?.what).toContain("6 minutes slow");
    expect(facts({ notes: { clockOff: -DAY_MS } })[0]?.what).toContain("24 hours fast");
  });

  test("tells a phone that the coach unpaired from one whose log-in has run out", () => {
    const revoked = facts({ identity: { ...IDENTITY, refused: true, revoked: true } });
    expect(revoked[0]).toMatchObject({ is: "revoked", what: "Ida Moor has unpaired this phone." });
    const expired = facts({ identity: { ...IDENTITY, refused: true } });
    expect(expired[0]?.is).toBe("log-in expired");
    expect(expired[0]?.todo).toContain("All is kept here.");
    const erased = facts({ identity: { ...IDENTITY, refused: true, erased: true } });
    expect(erased[0]?.what).toBe("Ida Moor has erased what the server had of you.");
  });

  test("says that a newer version waits for the end of a session", () => {
    expect(kinds({}, { update: true, underWay: true })).toStrictEqual(["update waiting"]);
    expect(kinds({}, { update: true })).toStrictEqual(["update ready"]);
  });

  test("offers the file after three days, and not before", () => {
    const entries = unsent(START - 3 * DAY_MS - 2);
    expect(facts({ entries })[0]).toMatchObject({ is: "three days", weight: "notice" });
    expect(facts({ entries })[0]?.todo).toContain("by the file below");
    expect(kinds({ entries: unsent(START - 3 * DAY_MS + MINUTE_MS) })).toStrictEqual([]);
  });

  test("names the worst first", () => {
    const state = {
      entries: unsent(START - 4 * DAY_MS),
      identity: { ...IDENTITY, refused: true },
      notes: { clockOff: DAY_MS, persisted: false },
      sync: { running: false, last: NO_ANSWER, nextAt: null },
    };
    const told = ["log-in expired", "three days", "offline", "clock", "not persisted"];
    expect(kinds(state)).toStrictEqual(told);
  });
});
