import { afterEach, describe, expect, test, vi } from "vitest";

import { draft } from "../../offline/entry";
import { sessionsBegun, underWay } from "../../offline/ledger-view";
import { minutesSince } from "../words/times";
import { oneExercise, openSetScreen, type Thumb } from "../../../tests/fakes/set-screen";

const HOUR = 3_600_000;

let thumb: Thumb;

afterEach(() => thumb.close());

async function open(...what: Parameters<typeof oneExercise>): Promise<void> {
  thumb = await openSetScreen(oneExercise(...what));
}

function shown(): string {
  return thumb.root.querySelector("[role=timer]")?.textContent ?? thumb.root.textContent;
}

describe.each([HOUR, -HOUR])("a phone's clock that is changed by %i ms", (jump) => {
  test("moves no rest, nor that of the next set, nor after a reload", async () => {
    await open("straight", { reps: 5 });
    await thumb.tap("Done");
    await thumb.wait(20_000);
    thumb.timers.jump(jump);
    await thumb.wait(5_000);
    expect(shown()).toContain("0:25");
    await thumb.reload();
    expect(shown()).toContain("0:25");
    await thumb.tap("Done");
    await thumb.wait(7_000);
    expect(shown()).toContain("0:07");
    await thumb.tap("Undo");
    expect(thumb.bodyOf("a-2")).toBeUndefined();
    expect(thumb.bodyOf("a-1")).toBeDefined();
  });

  test("moves no hold: it ends when its seconds are over", async () => {
    await open("hold", { seconds: 40 }, { details: { position: 0.5, per_rep: false } });
    await thumb.tap("Start the hold");
    await thumb.wait(12_000);
    thumb.timers.jump(jump);
    await thumb.wait(8_000);
    expect(shown()).toContain("20s left of 40 s");
    expect(thumb.bodyOf("a-1")).toBeUndefined();
    await thumb.wait(25_000);
    expect(thumb.bodyOf("a-1")).toMatchObject({ seconds: 40 });
    expect(shown()).toContain("0:05");
  });

  test("keeps no session from being finished, and its minutes are those that went by", async () => {
    await open("straight", { reps: 5 });
    await thumb.wait(300_000);
    thumb.timers.jump(jump);
    await thumb.tap("Done");
    const { phone } = thumb;
    await vi.waitFor(() => expect(phone.state().notes.jumps?.byMs).toBe(jump));
    const { sheet, steadyStart } = thumb.session();
    expect(minutesSince(steadyStart, phone.times().steady)).toBe(5);
    const finished = { rpe: 7, minutes: 5 };
    const place = { revision: 1, session: sheet.session };
    await phone.record(
      draft(phone.newId(), phone.times().now, "session.finished", finished, place),
    );
    expect(underWay(sessionsBegun(phone.state()))).toBeNull();
  });
});

describe("a clock that was changed while the app was closed", () => {
  async function reopened(jump: number): Promise<void> {
    await thumb.wait(20_000);
    await thumb.closedFor(() => thumb.timers.jump(jump));
  }

  test("is said where it was set back, and the athlete may go", async () => {
    await open("straight", { reps: 5 });
    await thumb.tap("Done");
    await reopened(-HOUR);
    expect(shown()).toContain("This phone's clock was changed: go when ready");
    await thumb.tap("Done");
    await thumb.wait(5_000);
    expect(shown()).toContain("0:05");
  });

  test("and where it was set on, which may have been a break", async () => {
    await open("straight", { reps: 5 });
    await thumb.tap("Done");
    await reopened(HOUR);
    expect(shown()).toContain("Over half an hour by this phone's clock: go when ready");
  });

  test("ends no hold: it is said that nobody knows", async () => {
    await open("hold", { seconds: 40 }, { details: { position: 0.5, per_rep: false } });
    await thumb.tap("Start the hold");
    await reopened(-HOUR);
    expect(thumb.root.textContent).toContain("How long the last clock ran is not known.");
    await thumb.tap("Done");
    expect(thumb.bodyOf("a-1")).toMatchObject({ seconds: 40 });
  });
});
