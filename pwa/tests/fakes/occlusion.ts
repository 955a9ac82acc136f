/** Invented occlusion work, and the questions as the server asks them. */
import { readFileSync } from "node:fs";
import { join } from "node:path";

import type { Answers, Questions, Standing } from "../../src/api/screening";
import type { LoadSheet, SheetExercise } from "../../src/api/types";
import { stamp } from "../../src/offline/clock";
import type { Bodies, Draft, Kind, Place } from "../../src/offline/entry";
import type { Placed } from "../../src/offline/ledger-view";
import { SHEET } from "./phone";

const FIXTURES = join(import.meta.dirname, "../../../fixtures");

export function fixture(name: string): unknown {
  return JSON.parse(readFileSync(join(FIXTURES, name), "utf8"));
}

export const QUESTIONS = fixture("occlusion/questions.json") as Questions;

export const OPEN: Standing = {
  open: true,
  outcome: "open",
  why: [],
  what_opens_it: [],
  do_now: [],
  until: "2026-07-01",
  company: false,
  answered_on: "2026-01-02",
  through: 10,
};

export const WELL_TODAY: Answers = Object.fromEntries(
  QUESTIONS.today.map(({ key }) => [key, "no"]),
);

export const CURL: SheetExercise = {
  key: "c",
  exercise: "barbell-curl",
  name: "Barbell curl",
  method: "occlusion",
  implement: { kind: "straight-bar", name: "Light bar", key: "light", mass_kg: 10, sides: 2 },
  loads: [
    { kg: 10, position: 2303 },
    { kg: 12.5, position: 2526 },
  ],
  rest: { from_s: 30, to_s: 30 },
  details: { limb: "upper-arm", restriction: "wrap", both_at_once: false, tightness: 5 },
  sets: [
    { key: "c-1", number: 1, target: { reps: 30 }, load: 0, cap: 0 },
    { key: "c-2", number: 2, target: { reps: 15 }, load: 0, cap: 0 },
  ],
  occlusion: {
    exposure: 5,
    rung: "exposure 5",
    wear_s: 300,
    limit_s: 900,
    break_s: 180,
    gap_h: 36,
    away_days: 21,
    most_tightness: 6,
    until: "2026-07-01",
    company: false,
    expected: [36, 14.7],
  },
};

export const ARMS: LoadSheet = { ...SHEET, session: "w1-fri", name: "Arms", exercises: [CURL] };
export const IN_ARMS: Place = { revision: 1, session: ARMS.session };

/** Monday noon, UTC. */
export const NOON = Date.UTC(2026, 1, 2, 12);
export const TODAY = "2026-02-02";

let made = 0;

/** An entry made so many milliseconds after noon, in the order in which they are called for. */
export function told<K extends Kind>(
  kind: K,
  body: Bodies[K],
  after = 0,
  place: Place & { readonly position?: number } = {},
): Placed {
  made += 1;
  const { position = null, revision = null, session = null, set = null } = place;
  const entry: Draft & { n: number } = {
    id: `id-${made}`,
    v: 1,
    n: made,
    kind,
    replaces: null,
    at: stamp(NOON + after, 0),
    revision,
    session,
    set,
    body,
  };
  return { entry, position };
}
