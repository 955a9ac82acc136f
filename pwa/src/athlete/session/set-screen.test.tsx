import { computed, signal } from "@preact/signals";
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";

import {
  fakePhone,
  type HeldTimers,
  holdTimers,
  newDraft,
  paired,
  SHEET,
} from "../../../tests/fakes/phone";
import { createFakeServer } from "../../../tests/fakes/server";
import type { LoadSheet } from "../../api/types";
import { draft } from "../../offline/entry";
import { sessionsBegun, underWay } from "../../offline/ledger-view";
import type { Phone } from "../../offline/phone";
import { uuid7 } from "../../offline/uuid";
import { type App, AppContext, type Focus } from "../app-context";
import { createRouter } from "../router";
import { SetScreen } from "./set-screen";

const [squat] = SHEET.exercises;
if (!squat) throw new Error("the sheet has a squat");

const BAR: LoadSheet = {
  ...SHEET,
  exercises: [
    {
      ...squat,
      implement: { kind: "straight-bar", name: "Steel bar", key: "bar", mass_kg: 20, sides: 2 },
      loads: [
        { kg: 80, position: 4382, side: [20, 10] },
        { kg: 85, position: 4443, side: [20, 10, 2.5] },
      ],
      rest: { from_s: 120, to_s: 180 },
    },
  ],
};

let phone: Phone;
let app: App;
let timers: HeldTimers;
let root: HTMLElement;
let taps = 0;

beforeEach(async () => {
  const server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  timers = holdTimers();
  phone = fakePhone({ timers });
  await paired(phone, server);
  const place = { revision: 1, session: BAR.session };
  await phone.record(draft(uuid7(timers.now()), timers.now(), "session.started", {}, place), BAR);
  const state = signal(phone.state());
  phone.subscribe(() => {
    state.value = phone.state();
  });
  app = {
    phone,
    state,
    sessions: computed(() => sessionsBegun(state.value)),
    clock: timers,
    router: createRouter(window),
    alarm: { ready: () => undefined, ring: vi.fn(), tick: () => undefined },
    update: { waiting: signal(false), useNow: () => undefined },
    focus: signal<Focus>({ exercise: null, correcting: null }),
    secret: signal(null),
    flash: signal(null),
  };
  root = document.createElement("div");
  document.body.replaceChildren(root);
  await act(() =>
    render(
      <AppContext.Provider value={app}>
        <SetScreen />
      </AppContext.Provider>,
      root,
    ),
  );
  taps = 0;
});

afterEach(async () => {
  render(null, root);
  phone.stop();
  await phone.settled();
});

/** A machine that runs other tests beside this one is slow. */
const PATIENT = { timeout: 10_000 };

/** Taps a button by its text or its label, once it takes taps. */
async function tap(name: string): Promise<void> {
  const button = await vi.waitFor(() => {
    const found = [...root.querySelectorAll("button")].find(
      (each) => each.textContent.includes(name) || each.getAttribute("aria-label") === name,
    );
    if (!found || found.disabled) throw new Error(`no button ${name} in: ${root.textContent}`);
    return found;
  }, PATIENT);
  taps += 1;
  await act(async () => {
    button.click();
    await phone.record(newDraft("message", { text: "after it" }));
  });
}

function bodyOf(set: string): unknown {
  return underWay(sessionsBegun(phone.state()))?.record.sets.get(set)?.entry.body;
}

describe("the Set screen", () => {
  test("records a set as planned with one tap", async () => {
    await tap("Done");
    expect([bodyOf("a-1"), taps]).toStrictEqual([{ load_kg: 80, reps: 5, rir: 2 }, 1]);
  });

  test("records other repetitions with two", async () => {
    await tap("Reps: less");
    await tap("Done");
    expect([bodyOf("a-1"), taps]).toStrictEqual([{ load_kg: 80, reps: 4, rir: 2 }, 2]);
  });

  test("records another load with two", async () => {
    await tap("Heavier");
    await tap("Done");
    expect([bodyOf("a-1"), taps]).toStrictEqual([{ load_kg: 85, reps: 5, rir: 2 }, 2]);
  });

  test("corrects the last set with three, and the correction replaces it", async () => {
    await tap("Done");
    const first = underWay(sessionsBegun(phone.state()))?.record.answers.get("a-1");
    taps = 0;
    await tap("Correct");
    await tap("In reserve: more");
    await tap("Save");
    expect([bodyOf("a-1"), taps]).toStrictEqual([{ load_kg: 80, reps: 5, rir: 3 }, 3]);
    const entry = underWay(sessionsBegun(phone.state()))?.record.sets.get("a-1");
    expect(entry).toMatchObject({ conflict: false, entry: { replaces: first } });
  });

  test("takes the last set back with one tap; then it is open and can be done anew", async () => {
    await tap("Done");
    await tap("Undo");
    expect(bodyOf("a-1")).toBeUndefined();
    await tap("Done");
    expect(underWay(sessionsBegun(phone.state()))?.record.sets.get("a-1")).toMatchObject({
      conflict: false,
    });
  });

  test("skips a set with its reason and without typing", async () => {
    await tap("Skip this set");
    await tap("Kit broken");
    expect([bodyOf("a-1"), taps]).toStrictEqual([{ why: "kit broken" }, 2]);
  });

  test("does not take a double tap for two sets", async () => {
    const button = await vi.waitFor(() => {
      const found = root.querySelector<HTMLButtonElement>("button.record:not(:disabled)");
      if (!found) throw new Error("the button is not armed yet");
      return found;
    }, PATIENT);
    await act(async () => {
      button.click();
      button.click();
      await phone.record(newDraft("message", { text: "after it" }));
    });
    root.querySelector<HTMLButtonElement>("button.record")?.click();
    expect(underWay(sessionsBegun(phone.state()))?.record.sets.size).toBe(1);
  });

  test("says what to hang for the first set, and that nothing changes for the second", async () => {
    expect(root.textContent).toContain("Put on 20, 10, each side.");
    await tap("Done");
    expect(root.textContent).toContain("Same plates as before.");
  });

  test("starts the rest clock by recording", async () => {
    expect(root.querySelector("[role=timer]")).toBeNull();
    await tap("Done");
    expect(root.querySelector("[role=timer]")?.textContent).toContain("rest 2:00 to 3:00");
  });

  test("says over the whole screen when the rest may end, also after a locked screen", async () => {
    await tap("Done");
    timers.pass(120_000);
    await act(() => void document.dispatchEvent(new Event("visibilitychange")));
    expect(app.flash.value).toBe("Go when ready");
    expect(app.alarm.ring).toHaveBeenCalledExactlyOnceWith(2);
    timers.pass(60_000);
    await act(() => void document.dispatchEvent(new Event("visibilitychange")));
    expect(app.flash.value).toBe("Go now");
  });

  test("ends with the way to finish", async () => {
    for (let set = 1; set <= 3; set += 1) await tap("Done");
    expect(root.textContent).toContain("That was the last set.");
  });
});
