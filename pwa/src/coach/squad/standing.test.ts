import { describe, expect, it } from "vitest";

import type { SquadLine, Stages } from "../answers";
import { heard, lastStage, stagesOf } from "./standing";

const NOW = Date.parse("2026-02-06T12:00:00");
const NOWHERE: Stages = {
  sent_at: null,
  delivered_at: null,
  opened_at: null,
  started_at: null,
  finished_at: null,
  synced_at: null,
};

function reached(states: Partial<Stages>): string[] {
  return stagesOf({ ...NOWHERE, ...states }).flatMap((each) => (each.reached ? each.name : []));
}

function line(part: Partial<SquadLine>): SquadLine {
  return {
    right: "own",
    owner: "Ottilie Brandt",
    id: "1",
    name: "Runa",
    last_heard_at: null,
    block: null,
    revision: null,
    states: NOWHERE,
    next: null,
    devices: 1,
    unplaced: 0,
    attention: [],
    ...part,
  };
}

describe("how far a revision has come", () => {
  it("is nowhere before anything is sent", () => {
    expect(lastStage(NOWHERE, NOW)).toBe("nothing sent");
  });

  it("includes what was passed on the way: what was begun had been opened", () => {
    expect(reached({ sent_at: "2026-02-02T08:00:00", started_at: "2026-02-04T18:00:00" })).toEqual([
      "sent",
      "delivered",
      "opened",
      "started",
    ]);
  });

  it("is not synced just because the phone was heard: the work has to be finished", () => {
    const waiting = { sent_at: "2026-02-02T08:00:00", synced_at: "2026-02-05T08:00:00" };
    expect(reached(waiting)).toEqual(["sent"]);
    expect(reached({ ...waiting, finished_at: "2026-02-04T19:00:00" })).toHaveLength(6);
  });

  it("says when the last stage was reached", () => {
    const states = {
      ...NOWHERE,
      sent_at: "2026-02-02T08:00:00",
      started_at: "2026-02-04T18:40:00",
    };
    expect(lastStage(states, NOW)).toBe("started Wednesday 18:40");
  });
});

describe("silence", () => {
  it("is told with the day that the phone was last heard", () => {
    expect(heard(line({ last_heard_at: "2026-02-03T20:00:00" }), NOW)).toEqual({
      text: "not heard from since Tuesday",
      quiet: true,
    });
  });

  it("is none within a day", () => {
    expect(heard(line({ last_heard_at: "2026-02-05T20:00:00" }), NOW)).toEqual({
      text: "heard from yesterday 20:00",
      quiet: false,
    });
  });

  it("is not the athlete's where no phone is paired", () => {
    expect(heard(line({ devices: 0 }), NOW).text).toBe("no phone paired");
  });
});
