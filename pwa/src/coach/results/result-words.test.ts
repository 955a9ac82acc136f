import { describe, expect, it } from "vitest";

import type { Done, Planned, ResultSession } from "../answers";
import {
  differenceInWords,
  doneInWords,
  plannedInWords,
  standingOf,
  whenInWords,
} from "./result-words";
import { setRows } from "./set-rows";

const NOTHING: Planned = {
  load_kg: null,
  reps: null,
  rir: null,
  seconds: null,
  to_failure: false,
  distance_m: null,
  blocks: [],
};
const PLANNED: Planned = { ...NOTHING, load_kg: 87.5, reps: 3, rir: 2 };
const DONE: Done = {
  kind: "done",
  load_kg: 87.5,
  reps: 3,
  rir: 2,
  to_failure: false,
  seconds: null,
  distance_m: null,
  blocks: [],
  velocities_m_s: [],
  mean_m_s: null,
  quality: null,
  side: null,
  tightness: null,
  why: null,
  at: "2026-02-04T18:40:00+01:00",
  two_answers: false,
  wild: false,
};

function session(part: Partial<ResultSession>): ResultSession {
  return {
    revision: 1,
    session: "s",
    name: "Pull",
    week_name: "Week 1",
    day: 3,
    on: "2026-02-04",
    state: "planned",
    started_at: null,
    finished_at: null,
    rpe: null,
    minutes: null,
    comment: null,
    why_stopped: null,
    exercises: [],
    worn: [],
    ...part,
  };
}

describe("a set", () => {
  it.each([
    [PLANNED, "87.5 kg × 3, 2 RIR"],
    [{ ...NOTHING, reps: 5, rir: 2 }, "5 reps, 2 RIR"],
    [{ ...NOTHING, seconds: 40 }, "40 s"],
    [{ ...NOTHING, load_kg: 20, seconds: 30 }, "20 kg × 30 s"],
    [{ ...NOTHING, load_kg: 6, reps: 15, to_failure: true }, "6 kg × 15, to failure"],
    [{ ...NOTHING, load_kg: 24, distance_m: 30 }, "24 kg × 30 m"],
    [{ ...NOTHING, load_kg: 103, blocks: [2, 2, 2] }, "103 kg × 2 + 2 + 2"],
    [NOTHING, "—"],
  ])("is planned in the trade's own figures", (planned, words) => {
    expect(plannedInWords(planned)).toBe(words);
  });

  it("of one side with a wrap on is told with the side and how tight it felt", () => {
    const curl: Done = { ...DONE, load_kg: 6, reps: 14, rir: null, side: "left", tightness: 4.5 };
    expect(doneInWords(curl)).toBe("left, 6 kg × 14, tightness 4.5 of 10");
  });

  it("that was met has no difference", () => {
    expect(differenceInWords(PLANNED, DONE)).toBe("");
  });

  it("says what came out otherwise, with its sign and unit", () => {
    const heavier = { ...DONE, load_kg: 90, reps: 2, rir: 4 };
    expect(differenceInWords(PLANNED, heavier)).toBe("+2.5 kg, −1 rep, +2 RIR");
  });

  it("on a cable differs by what is felt, to a tenth", () => {
    const cable = { ...PLANNED, load_kg: 45.684 };
    expect(differenceInWords(cable, { ...DONE, load_kg: 45 })).toBe("−0.7 kg");
  });

  it("of speed work is told with its quality", () => {
    expect(doneInWords({ ...DONE, quality: 4 })).toBe("87.5 kg × 3, 2 RIR, quality 4 of 5");
  });

  it("of speed work is told with each rep's velocity and their mean", () => {
    const fast = { ...DONE, rir: null, velocities_m_s: [0.84, 0.82, 0.8], mean_m_s: 0.82 };
    expect(doneInWords(fast)).toBe("87.5 kg × 3, 0.84 0.82 0.80 m/s, mean 0.82");
  });

  it("in blocks differs by its repetitions in all", () => {
    const cluster = { ...NOTHING, load_kg: 103, blocks: [2, 2, 2] };
    const done = { ...DONE, ...NOTHING, load_kg: 103, reps: 5, blocks: [2, 2, 1] };
    expect(doneInWords(done)).toBe("103 kg × 2 + 2 + 1");
    expect(differenceInWords(cluster, done)).toBe("−1 rep");
  });

  it("over a distance is told with the time that it took", () => {
    const carry = { ...DONE, ...NOTHING, load_kg: 50, distance_m: 25, seconds: 18.4 };
    expect(doneInWords(carry)).toBe("50 kg × 25 m, 18.4 s");
    expect(differenceInWords({ ...NOTHING, load_kg: 50, distance_m: 30 }, carry)).toBe("−5 m");
  });

  it("of a maximum test was made or missed", () => {
    const attempt = { ...DONE, ...NOTHING, load_kg: 140, reps: 0 };
    expect(doneInWords(attempt, "maximum-test")).toBe("140 kg missed");
    expect(doneInWords({ ...attempt, reps: 1 }, "maximum-test")).toBe("140 kg made");
    const planned = { ...NOTHING, load_kg: 137.5, reps: 1 };
    expect(differenceInWords(planned, attempt, "maximum-test")).toBe("+2.5 kg");
  });

  it("that was skipped says why and differs from nothing", () => {
    const skipped: Done = { ...DONE, kind: "skipped", why: "the rack was taken" };
    expect(doneInWords(skipped)).toBe("skipped: the rack was taken");
    expect(differenceInWords(PLANNED, skipped)).toBe("");
  });
});

describe("rows of sets", () => {
  const asked = (number: number, done: Done | null = null) => ({
    key: `s${number}`,
    number,
    planned: PLANNED,
    done,
    sides: [],
    instead: null,
  });

  it("tell sets together that nobody reported and that were planned alike", () => {
    expect(setRows([asked(1), asked(2), asked(3)]).map((row) => row.numbers)).toEqual(["1–3"]);
  });

  it("give each reported set its own, for each was done by itself", () => {
    const rows = setRows([asked(1, DONE), asked(2, DONE), asked(3), asked(4)]);
    expect(rows.map((row) => row.numbers)).toEqual(["1", "2", "3–4"]);
  });
});

describe("a one-sided set", () => {
  const left: Done = { ...DONE, side: "left", reps: 6 };
  const right: Done = { ...DONE, side: "right", reps: 5 };
  const set = {
    key: "s1",
    number: 1,
    planned: PLANNED,
    done: right,
    sides: [left, right],
    instead: null,
  };

  it("has a row for each side", () => {
    const rows = setRows([set]).map(({ numbers, set: { done } }) => [numbers, done?.reps]);
    expect(rows).toEqual([
      ["1 left", 6],
      ["1 right", 5],
    ]);
  });

  it("of which one side was told says which", () => {
    const [row] = setRows([{ ...set, done: left, sides: [left] }]);
    expect(row?.set.done && doneInWords(row.set.done)).toBe("left, 87.5 kg × 6, 2 RIR");
  });
});

describe("when a session was", () => {
  it("is the day that it was planned for", () => {
    expect(whenInWords(session({}))).toBe("Week 1, Wednesday 4 Feb 2026");
  });

  it("names the other day too where it was done on another", () => {
    const late = session({ state: "finished", finished_at: "2026-02-06T18:00:00" });
    expect(whenInWords(late)).toBe("Week 1, Wednesday 4 Feb 2026, done on 6 Feb 2026");
  });
});

describe("a session whose day has passed", () => {
  it("is missed only where the phone was heard after that day", () => {
    expect(standingOf(session({}), "2026-02-05T09:00:00", "2026-02-06")).toBe("missed");
  });

  it("is not heard from where the phone has been silent since", () => {
    expect(standingOf(session({}), "2026-02-04T07:00:00", "2026-02-06")).toBe("silent");
    expect(standingOf(session({}), null, "2026-02-06")).toBe("silent");
  });

  it("is what the phone said, once it said anything", () => {
    expect(standingOf(session({ state: "started" }), null, "2026-02-06")).toBe("under way");
    expect(standingOf(session({ state: "stopped" }), null, "2026-02-06")).toBe("stopped");
  });

  it("is ahead or due until then", () => {
    expect(standingOf(session({}), "2026-02-03T07:00:00", "2026-02-03")).toBe("ahead");
    expect(standingOf(session({}), "2026-02-04T07:00:00", "2026-02-04")).toBe("today");
  });
});
