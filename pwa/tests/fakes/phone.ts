/** A phone without a browser: storage in memory, the clock and its timers held still. */
import { get, post } from "../../src/api/client";
import type { LoadSheet } from "../../src/api/types";
import type { Timers } from "../../src/offline/clock";
import { type Bodies, type Draft, draft, type Kind, type Place } from "../../src/offline/entry";
import { createPhone, type Phone } from "../../src/offline/phone";
import type { Count } from "../../src/offline/steady";
import { openStorage, type Storage } from "../../src/offline/storage";
import { uuid7 } from "../../src/offline/uuid";
import type { FakeServer } from "./server";

export interface HeldTimers extends Timers {
  /** Lets that much time go by and runs what falls due. */
  readonly pass: (ms: number) => void;
  readonly now: () => number;
  /** The time of day moves and the page counts nothing: the clock was changed, or the phone slept. */
  readonly jump: (ms: number) => void;
  readonly count: Count;
  readonly waiting: () => number[];
}

export const START = Date.UTC(2026, 1, 3, 17, 0);

export function holdTimers(start = START): HeldTimers {
  let now = start;
  /** What the time of day is ahead of the page's own count. */
  let ahead = 0;
  let timers: { readonly at: number; readonly run: () => void }[] = [];
  return {
    now: () => now + ahead,
    jump(ms) {
      ahead += ms;
    },
    count: { ms: () => now, away: () => false },
    waiting: () => timers.map(({ at }) => at - now).sort((one, other) => one - other),
    after(ms, run) {
      const timer = { at: now + ms, run };
      timers.push(timer);
      return () => {
        timers = timers.filter((each) => each !== timer);
      };
    },
    pass(ms) {
      const until = now + ms;
      for (;;) {
        const due = timers
          .filter(({ at }) => at <= until)
          .sort((one, other) => one.at - other.at)[0];
        if (!due) break;
        timers = timers.filter((each) => each !== due);
        now = Math.max(now, due.at);
        due.run();
      }
      now = until;
    },
  };
}

interface Options {
  readonly storage?: Storage;
  readonly timers?: HeldTimers;
  readonly persist?: () => Promise<boolean>;
}

export function fakePhone(options: Options = {}): Phone {
  const timers = options.timers ?? holdTimers();
  return createPhone({
    storage: options.storage ?? openStorage(),
    ask: { get, post },
    clock: timers,
    count: timers.count,
    timers,
    random: () => 0.5,
    alone: (work) => work(),
    tell: () => undefined,
    persist: options.persist ?? (() => Promise.resolve(true)),
    forgetPictures: () => Promise.resolve(),
  });
}

/** Pairs the phone with the fake server and fetches what it has. */
export async function paired(phone: Phone, server: FakeServer): Promise<void> {
  await phone.load();
  const { device } = server;
  await phone.takePairing({
    device,
    athlete: { id: "athlete-1", name: "Osk Venner" },
    coach: "Ida Moor",
    epoch: "epoch-1",
    cursor: 0,
  });
  await exchanged(phone);
}

/** Exchanges until nothing is running any more. */
export async function exchanged(phone: Phone): Promise<void> {
  phone.poke("asked");
  await phone.settled();
  await phone.load();
}

let made = 0;

/** A draft with an id that no other has. */
export function newDraft<K extends Kind>(kind: K, body: Bodies[K], place: Place = {}): Draft {
  made += 1;
  return draft(uuid7(START + made), START + made, kind, body, place);
}

export const SHEET: LoadSheet = {
  session: "w1-mon",
  name: "Squat",
  week: "w1",
  week_name: "Week 1",
  day: 1,
  athlete: "Osk Venner",
  kit: "Forge cellar",
  minutes: 40,
  needs: [],
  revision: 1,
  exercises: [
    {
      key: "a",
      exercise: "back-squat",
      name: "Back squat",
      method: "straight",
      implement: { kind: "straight-bar", name: "Steel bar" },
      loads: [
        { kg: 80, position: 4382 },
        { kg: 82.5, position: 4413 },
      ],
      sets: [
        { key: "a-1", number: 1, target: { reps: 5, rir: 2 }, load: 0 },
        { key: "a-2", number: 2, target: { reps: 5, rir: 2 }, load: 0 },
        { key: "a-3", number: 3, target: { reps: 5, rir: 2 }, load: 0 },
      ],
    },
  ],
};

export const IN_SHEET = { revision: 1, session: SHEET.session };
