import { expect, test } from "vitest";

import { newDraft, SHEET } from "../../../tests/fakes/phone";
import type { LoadSheet } from "../../api/types";
import type { Draft } from "../../offline/entry";
import type { PhoneState } from "../../offline/phone";
import { planOf } from "./plan";

const NOON = (day: string) => new Date(`${day}T12:00:00`).getTime();
const FINISHED = { rpe: 7, minutes: 40 };

type Item = PhoneState["feed"][number];

function feedOf(items: readonly (readonly [string, unknown])[]): Item[] {
  return items.map(([kind, body], index) => ({ position: index + 1, kind, key: `${index}`, body }));
}

function notice(
  number: number,
  run: number | undefined,
  sessions: readonly string[],
): Item["body"] {
  return {
    number,
    ...(run && { run }),
    block_name: "Base",
    sent_at: 0,
    sessions: sessions.map((session) => ({ session })),
  };
}

function sheet(revision: number, session: string, on: string): LoadSheet {
  return { ...SHEET, revision, session, on };
}

function did(revision: number, session: string): Draft {
  return newDraft("session.finished", FINISHED, { revision, session });
}

function open(feed: readonly Item[], entries: readonly Draft[], today: string): string[] {
  const unsaved = entries.map((draft) => ({ draft, failed: false }));
  const state = { entries: [], unsaved, pins: [], identity: null, feed } as unknown as PhoneState;
  const plan = planOf(state, null, NOON(today));
  return plan.open.map(({ revision, session }) => `${revision} ${session}`);
}

test("a session that was done in another run of the block is to be done again", () => {
  const feed = feedOf([
    ["revision", notice(1, 1, ["mon"])],
    ["revision", notice(3, 3, ["mon"])],
    ["sheet", sheet(3, "mon", "2026-03-02")],
  ]);
  expect(open(feed, [did(1, "mon")], "2026-03-02")).toEqual(["3 mon"]);
  expect(open(feed, [did(3, "mon")], "2026-03-02")).toEqual([]);
});

test("a session that was done before the block was sent again is done", () => {
  const feed = feedOf([
    ["revision", notice(1, undefined, ["mon"])],
    ["revision", notice(2, 1, ["mon"])],
    ["sheet", sheet(2, "mon", "2026-03-02")],
  ]);
  expect(open(feed, [did(1, "mon")], "2026-03-02")).toEqual([]);
});

test("what is left of this week comes before a plan that was sent early", () => {
  const feed = feedOf([
    ["revision", notice(1, 1, ["mon", "fri"])],
    ["sheet", sheet(1, "mon", "2026-03-02")],
    ["sheet", sheet(1, "fri", "2026-03-06")],
    ["revision", notice(2, 2, ["mon", "fri"])],
    ["sheet", sheet(2, "mon", "2026-03-09")],
    ["sheet", sheet(2, "fri", "2026-03-13")],
  ]);
  const all = ["1 fri", "2 mon", "2 fri", "1 mon"];
  expect(open(feed, [], "2026-03-05")).toEqual(all);
  expect(open(feed, [], "2026-03-09")).toEqual(["2 mon", "2 fri", "1 mon", "1 fri"]);
});

test("the session under way stands alone, and its namesake of the next run stays open", () => {
  const feed = feedOf([
    ["revision", notice(1, 1, ["mon"])],
    ["sheet", sheet(1, "mon", "2026-03-02")],
    ["revision", notice(2, 2, ["mon"])],
    ["sheet", sheet(2, "mon", "2026-03-09")],
  ]);
  const state = {
    entries: [],
    unsaved: [],
    pins: [],
    identity: null,
    feed,
  } as unknown as PhoneState;
  const record = { revision: 1, session: "mon" } as Parameters<typeof planOf>[1];
  const plan = planOf(state, record, NOON("2026-03-02"));
  expect(plan.open.map(({ revision }) => revision)).toEqual([2]);
});
