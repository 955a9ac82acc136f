import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

import type { Draft } from "./entry";
import { fold, type SessionRecord } from "./fold";

interface Case {
  readonly name: string;
  readonly entries: Draft[];
  readonly fold: { readonly sessions: Record<string, unknown>[] };
}

const FOLDER = join(import.meta.dirname, "../../../fixtures/ledgers");

const CASES = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".json"))
  .flatMap((name) => {
    const { cases } = JSON.parse(readFileSync(join(FOLDER, name), "utf8")) as { cases: Case[] };
    return cases;
  });

/** The phone keeps no wraps and pains by session, so these stay out of the comparison. */
function asWritten(record: SessionRecord): Record<string, unknown> {
  const sets = [...record.sets].map(([key, { entry, sides, conflict, addedTo, first }]) => [
    key,
    {
      kind: entry.kind.replace("set.", ""),
      id: entry.id,
      at: entry.at,
      body: entry.body,
      conflict,
      added_to: addedTo,
      sides: Object.fromEntries([...sides].map(([side, { id }]) => [side, id])),
      first,
    },
  ]);
  return {
    revision: record.revision,
    session: record.session,
    opened_at: record.opened[0]?.at ?? null,
    started_at: record.started[0]?.at ?? null,
    finished: record.finished?.id ?? null,
    stopped: record.stopped?.id ?? null,
    sets: Object.fromEntries(sets) as unknown,
    added: Object.fromEntries(record.added),
    swaps: Object.fromEntries(record.swaps),
    swapped: Object.fromEntries(
      [...record.swapped].map(([exercise, all]) => [exercise, all.map(({ id }) => id)]),
    ),
    conflicts: record.conflicts,
  };
}

function sessionsOf(entries: Draft[]): Record<string, unknown>[] {
  return fold(entries)
    .sort((one, other) => {
      const byRevision = (one.revision ?? 0) - (other.revision ?? 0);
      if (byRevision !== 0) return byRevision;
      return one.session < other.session ? -1 : 1;
    })
    .map(asWritten);
}

describe("the shared ledgers", () => {
  test("are there", () => {
    expect(CASES.length).toBeGreaterThan(40);
  });

  test.each(CASES)("$name: folded as the server folds it", ({ entries, fold: written }) => {
    const expected = written.sessions.map(({ wraps: _w, pains: _p, ...rest }) => rest);
    expect(sessionsOf(entries)).toStrictEqual(expected);
  });

  test.each(CASES)("$name: the same whatever the order of arrival", ({ entries }) => {
    const twice = [...entries.toReversed(), ...entries];
    expect(sessionsOf(twice)).toStrictEqual(sessionsOf(entries));
  });
});
