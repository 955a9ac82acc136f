/** Entries: the lines of the ledger, as the athlete's devices write them. */
import type { Answers } from "../api/screening";
import { stamp } from "./clock";

export const SIDES = ["left", "right"] as const;
export type Side = (typeof SIDES)[number];

/** What was done in a set. `load_kg` is null where there was no load or it is not known. */
export interface SetDone {
  readonly load_kg: number | null;
  readonly reps: number | null;
  /** Repetitions in reserve, in halves. */
  readonly rir: number | null;
  readonly to_failure?: boolean;
  /** Mean velocity of each repetition of a speed set. */
  readonly velocities_m_s?: readonly number[];
  /** 1 to 5, for a speed set whose velocity was not measured. */
  readonly quality?: number;
  readonly seconds?: number;
  readonly distance_m?: number;
  readonly side?: Side;
  /** Repetitions of each block of a cluster. */
  readonly blocks?: readonly number[];
  /** How tight the wrap felt, 0 to 10. */
  readonly tightness?: number;
  /** 0 to 10. */
  readonly pain?: number;
}

/** What is different in the gym, as `server/undercroft/documents/kit_change.py` reads it. */
export type KitChange =
  | {
      readonly kind: "gone" | "back";
      /** The list of the kit's document in which the piece stands. */
      readonly list: string;
      /** Its key, its mass in kg where it has none, or its words. */
      readonly name: string | number;
      readonly count?: number;
      /** As it is written down, so that it can come back. */
      readonly row?: unknown;
    }
  | {
      readonly kind: "bar-weighed";
      readonly key: string;
      readonly with_kg: number;
      readonly without_kg: number;
    }
  | {
      readonly kind: "band-measured";
      readonly key: string;
      readonly rest_length_m: number;
      readonly readings: readonly { readonly length_m: number; readonly kg: number }[];
    }
  | { readonly kind: "withdrawn" };

export interface Bodies {
  /** The athlete has it in front of them; that begins nothing. */
  "session.opened": Readonly<Record<string, never>>;
  "session.started": Readonly<Record<string, never>>;
  "session.finished": { readonly rpe: number; readonly minutes: number; readonly comment?: string };
  "session.stopped": {
    readonly why: string;
    /** Stop signs of occlusion work, by key. */
    readonly signs?: readonly string[];
    readonly comment?: string;
  };
  "set.done": SetDone;
  "set.skipped": { readonly why: string; readonly side?: Side };
  "set.cleared": { readonly side?: Side };
  "set.added": { readonly exercise: string };
  "exercise.swapped": {
    /** The exercise's key in the session. */
    readonly exercise: string;
    readonly to: string;
    /** Key of what failed, and how the athlete chose it. */
    readonly missing?: string;
    readonly why?: string;
  };
  "max.tested": { readonly lift: string; readonly kg: number; readonly conditions?: string };
  "pain.reported": { readonly where: string; readonly level: number; readonly comment?: string };
  "screening.answered": { readonly answers: Answers };
  /** `limb` as left-thigh, or thigh for both sides. */
  "wrap.on": { readonly limb: string };
  "wrap.off": { readonly limb: string; readonly seconds: number };
  "wrap.check": { readonly numb: boolean; readonly tightness?: number };
  "after.check": { readonly hours: number; readonly signs: readonly string[] };
  /** 1 to 5, 5 the best. */
  readiness: { readonly score: number; readonly comment?: string };
  body_mass: { readonly kg: number };
  /** A proposal; the coach decides. */
  "kit.changed": { readonly item: string; readonly change: KitChange };
  message: { readonly text: string };
}

export type Kind = keyof Bodies;

/** An entry before its number is given; kinds that this app does not know may come by the feed. */
export interface Draft {
  readonly id: string;
  readonly v: number;
  readonly kind: string;
  readonly replaces: string | null;
  readonly at: string;
  readonly revision: number | null;
  readonly session: string | null;
  readonly set: string | null;
  readonly body: unknown;
}

export interface Entry extends Draft {
  readonly n: number;
}

export type Of<K extends Kind, E extends Draft = Draft> = E & {
  readonly kind: K;
  readonly body: Bodies[K];
};

/** What an entry is about. */
export interface Place {
  readonly revision?: number | null;
  readonly session?: string | null;
  readonly set?: string | null;
  /** The entry that this one corrects. */
  readonly replaces?: string | null;
}

/**
 * A draft under an id that was made when the screen was drawn, so that a double tap is one entry.
 */
export function draft<K extends Kind>(
  id: string,
  now: number,
  kind: K,
  body: Bodies[K],
  place: Place = {},
): Of<K> {
  const { revision = null, session = null, set = null, replaces = null } = place;
  return { id, v: 1, kind, replaces, at: stamp(now), revision, session, set, body };
}

export function is<K extends Kind, E extends Draft>(entry: E, kind: K): entry is Of<K, E> {
  return entry.kind === kind;
}
