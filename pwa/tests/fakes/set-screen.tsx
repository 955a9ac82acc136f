/** The Set screen with a phone in memory, and a thumb that counts its taps. */
import { computed, signal } from "@preact/signals";
import { render } from "preact";
import { act } from "preact/test-utils";
import { vi } from "vitest";

import type { LoadSheet, SheetExercise, SheetSet } from "../../src/api/types";
import { type App, AppContext, type Focus } from "../../src/athlete/app-context";
import { loadMore } from "../../src/athlete/later";
import { createRouter } from "../../src/athlete/router";
import { SetScreen } from "../../src/athlete/session/set-screen";
import { draft } from "../../src/offline/entry";
import { type Session, sessionsBegun, underWay } from "../../src/offline/ledger-view";
import type { Phone } from "../../src/offline/phone";
import { openStorage, type Storage } from "../../src/offline/storage";
import { uuid7 } from "../../src/offline/uuid";
import { fakePhone, type HeldTimers, holdTimers, newDraft, paired, SHEET } from "./phone";
import { createFakeServer } from "./server";

const LOADS = [
  { kg: 80, position: 4382 },
  { kg: 85, position: 4443 },
];

/** A session of one exercise with three sets. */
export function oneExercise(
  method: SheetExercise["method"],
  target: SheetSet["target"],
  more: Partial<SheetExercise> = {},
): LoadSheet {
  const sets = [1, 2, 3].map((number) => ({ key: `a-${number}`, number, target, load: 0 }));
  const exercise: SheetExercise = {
    key: "a",
    exercise: "back-squat",
    name: "Back squat",
    method,
    implement: { kind: "straight-bar", name: "Steel bar" },
    loads: LOADS,
    sets,
    rest: { from_s: 60, to_s: 90 },
    ...more,
  };
  return { ...SHEET, exercises: [exercise] };
}

/** A machine that runs other tests beside this one is slow. */
const PATIENT = { timeout: 10_000 };

export interface Thumb {
  readonly app: App;
  readonly phone: Phone;
  readonly timers: HeldTimers;
  readonly root: HTMLElement;
  /** Taps so far; set it to count anew. */
  taps: number;
  /** Taps a button by its text or its label, once it takes taps. */
  readonly tap: (name: string) => Promise<void>;
  /** Lets time go by as behind a locked screen, then looks again. */
  readonly wait: (ms: number) => Promise<void>;
  readonly session: () => Session;
  readonly bodyOf: (set: string) => unknown;
  /** The page is gone and loaded again; the phone's storage and the time of day stay. */
  readonly reload: () => Promise<void>;
  /** The same, and meanwhile that happens. */
  readonly closedFor: (happens: () => void) => Promise<void>;
  readonly close: () => Promise<void>;
}

/** A session on that sheet has been started, and its first set is shown. */
export async function openSetScreen(sheet: LoadSheet): Promise<Thumb> {
  const server = createFakeServer();
  vi.stubGlobal("fetch", server.fetch);
  const timers = holdTimers();
  const storage = openStorage();
  const phone = fakePhone({ timers, storage });
  await paired(phone, server);
  const place = { revision: 1, session: sheet.session };
  await phone.record(draft(uuid7(timers.now()), timers.now(), "session.started", {}, place), sheet);
  return await shown(phone, timers, storage);
}

async function shown(first: Phone, timers: HeldTimers, storage: Storage): Promise<Thumb> {
  const root = document.createElement("div");
  document.body.replaceChildren(root);
  let phone = first;
  let app = appOf(phone, timers);

  async function draw(): Promise<void> {
    await act(() =>
      render(
        <AppContext.Provider value={app}>
          <SetScreen />
        </AppContext.Provider>,
        root,
      ),
    );
  }

  const thumb: Thumb = {
    get app() {
      return app;
    },
    get phone() {
      return phone;
    },
    timers,
    root,
    taps: 0,
    async tap(name) {
      const button = await vi.waitFor(() => armed(root, name), PATIENT);
      thumb.taps += 1;
      // No two taps fall on one millisecond: the order of ids is that of the taps.
      timers.pass(1);
      await act(() => button.click());
      await settled(phone);
    },
    async wait(ms) {
      timers.pass(ms);
      await act(() => void document.dispatchEvent(new Event("visibilitychange")));
      await settled(phone);
    },
    session() {
      const found = underWay(sessionsBegun(phone.state()));
      if (!found) throw new Error("no session is under way");
      return found;
    },
    bodyOf: (set) => thumb.session().record.sets.get(set)?.entry.body,
    reload: () => thumb.closedFor(() => undefined),
    async closedFor(happens) {
      render(null, root);
      phone.stop();
      await phone.settled();
      happens();
      phone = fakePhone({ timers, storage });
      await phone.load();
      app = appOf(phone, timers);
      await draw();
      await settled(phone);
    },
    async close() {
      render(null, root);
      phone.stop();
      await phone.settled();
    },
  };
  await loadMore();
  await draw();
  await settled(phone);
  return thumb;
}

/** What a tap has set off is stored and drawn, and what follows from that as well. */
async function settled(phone: Phone): Promise<void> {
  for (const round of ["first", "second", "third"]) {
    await act(async () => void (await phone.record(newDraft("message", { text: round }))));
    await act(() => new Promise<void>((resolve) => void setTimeout(resolve)));
  }
}

function armed(root: HTMLElement, name: string): HTMLButtonElement {
  const found = [...root.querySelectorAll("button")].find(
    (each) => each.textContent.includes(name) || each.getAttribute("aria-label") === name,
  );
  if (!found || found.disabled) throw new Error(`no button ${name} in: ${root.textContent}`);
  return found;
}

function appOf(phone: Phone, timers: HeldTimers): App {
  const state = signal(phone.state());
  phone.subscribe(() => {
    state.value = phone.state();
  });
  return {
    phone,
    state,
    sessions: computed(() => sessionsBegun(state.value)),
    clock: timers,
    router: createRouter(window),
    alarm: { ready: () => undefined, ring: vi.fn(), tick: vi.fn() },
    install: { offer: signal(null) },
    update: { waiting: signal(false), useNow: () => undefined },
    focus: signal<Focus>({ exercise: null, correcting: null }),
    secret: signal(null),
    flash: signal(null),
  };
}
