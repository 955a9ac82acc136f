/** What the whole desk shares: who is logged in, where we are, whether the server answers. */
import { signal, type Signal } from "@preact/signals";
import { createContext } from "preact";
import { useContext } from "preact/hooks";

import { NoAnswer, Refused } from "../../api/client";
import type { CatalogueEntry, Coach } from "../answers";
import { forget, keep, kept, type Shelf } from "./kept";

export interface Desk {
  readonly path: Signal<string>;
  /** The address that was last gone to within the desk; null on the first page. */
  readonly wentTo: Signal<string | null>;
  readonly coach: Signal<Coach | null>;
  /** The session has ended while the desk was open. */
  readonly locked: Signal<boolean>;
  /** Grows with each log-in, so that screens refused before ask again. */
  readonly logIns: Signal<number>;
  readonly answers: Signal<boolean>;
  readonly exercises: Signal<readonly CatalogueEntry[]>;
  /** Why the page must not be left just now; null where it may. */
  readonly unsaved: Signal<string | null>;
  /** The session last open in a writer, by its key: another view of the block opens at it. */
  readonly session: Signal<string | null>;
  /** The secret of a link from another coach, taken out of the address; kept nowhere else. */
  readonly offered: Signal<string | null>;
  readonly shelf: Shelf;
  readonly random: () => number;
  readonly now: () => number;
}

const COACH = "coach";
const EXERCISES = "exercises";

export function createDesk(path: string, shelf: Shelf): Desk {
  return {
    path: signal(path),
    wentTo: signal(null),
    coach: signal(kept(shelf, COACH) as Coach | null),
    locked: signal(false),
    logIns: signal(0),
    answers: signal(true),
    exercises: signal((kept(shelf, EXERCISES) as readonly CatalogueEntry[] | null) ?? []),
    unsaved: signal(null),
    offered: signal(null),
    session: signal(null),
    shelf,
    random: Math.random,
    now: Date.now,
  };
}

const Shared = createContext<Desk | null>(null);

export const DeskProvider = Shared.Provider;

export function useDesk(): Desk {
  const desk = useContext(Shared);
  if (!desk) throw new Error("useDesk is called outside DeskProvider");
  return desk;
}

/** Asks the server, and notes whether it answers and whether it still knows us. */
export async function ask<T>(desk: Desk, question: () => Promise<T>): Promise<T> {
  try {
    const answer = await question();
    desk.answers.value = true;
    return answer;
  } catch (fault) {
    if (fault instanceof NoAnswer) desk.answers.value = false;
    if (fault instanceof Refused) {
      desk.answers.value = true;
      if (fault.status === 401) desk.locked.value = true;
    }
    throw fault;
  }
}

export function welcome(desk: Desk, coach: Coach): void {
  desk.coach.value = coach;
  desk.locked.value = false;
  desk.logIns.value += 1;
  keep(desk.shelf, COACH, coach);
}

export function sayGoodbye(desk: Desk): void {
  desk.coach.value = null;
  desk.locked.value = false;
  forget(desk.shelf, COACH);
}

export function learnExercises(desk: Desk, exercises: readonly CatalogueEntry[]): void {
  desk.exercises.value = exercises;
  keep(desk.shelf, EXERCISES, exercises);
}

/** Whether the page may be left; asks the person where something is not saved. */
export function mayLeave(desk: Desk): boolean {
  const why = desk.unsaved.value;
  if (why !== null && !window.confirm(`${why} Leave without saving?`)) return false;
  desk.unsaved.value = null;
  return true;
}

export function arrive(desk: Desk, at: string): void {
  desk.wentTo.value = at;
  desk.path.value = at;
}

export function go(desk: Desk, to: string): void {
  if (!mayLeave(desk)) return;
  history.pushState(null, "", to);
  arrive(desk, to);
  window.scrollTo(0, 0);
}
