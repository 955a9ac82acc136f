import { describe, expect, test } from "vitest";

import type { FeedItem } from "../../api/sync";
import { draft, type KitChange } from "../../offline/entry";
import type { PhoneState } from "../../offline/phone";
import type { Piece } from "./pieces";
import { goneOf, proposalsOf } from "./proposals";

const BAND = { list: "bands", name: "thin", title: "thin", facts: "", count: null, row: {} };
const GONE: KitChange = { kind: "gone", list: "bands", name: "thin", row: { key: "thin" } };

function said(id: string, change: KitChange, replaces: string | null = null) {
  return draft(id, 0, "kit.changed", { item: "thin", change }, { replaces });
}

function phone(entries: readonly ReturnType<typeof said>[], accepted: readonly string[]) {
  const decided = accepted.map((key): FeedItem => ({
    position: 1,
    kind: "kit.decided",
    key,
    body: { accepted: true },
  }));
  const unsaved = entries.map((entry) => ({ draft: entry, failed: false }));
  return {
    entries: [],
    feed: decided,
    unsaved,
    notes: {},
    identity: null,
  } as unknown as PhoneState;
}

function gone(state: PhoneState, here: readonly Piece[] = []): string[] {
  return goneOf(proposalsOf(state), here).map(({ entry }) => entry.id);
}

describe("a band that is gone with the coach's word", () => {
  test("can be said to be here again", () => {
    expect(gone(phone([said("1", GONE)], ["1"]))).toStrictEqual(["1"]);
  });

  test("can be, too, where the word was taken back too late", () => {
    const state = phone([said("1", GONE), said("2", { kind: "withdrawn" }, "1")], ["1"]);
    expect(gone(state)).toStrictEqual(["1"]);
  });

  test("is not said to be gone once the coach has written it down again", () => {
    expect(gone(phone([said("1", GONE)], ["1"]), [BAND])).toStrictEqual([]);
  });
});

test("what was taken back before the coach decided is no proposal", () => {
  const state = phone([said("1", GONE), said("2", { kind: "withdrawn" }, "1")], []);
  expect(proposalsOf(state)).toStrictEqual([]);
});
