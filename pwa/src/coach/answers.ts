/** What the server answers at the desk. Moments are ISO 8601 in UTC, masses kilograms. */
import type { Fault } from "../api/client";
import type { Athlete, Block, Implement, Kit, LoadSheet } from "../api/types";

export interface Coach {
  readonly id: string;
  readonly name: string;
  readonly email: string;
}

export interface Named {
  readonly id: string;
  readonly name: string;
}

/** How far a revision has come; each is the moment that it got there. */
export interface Stages {
  readonly sent_at: string | null;
  readonly delivered_at: string | null;
  readonly opened_at: string | null;
  readonly started_at: string | null;
  readonly finished_at: string | null;
  readonly synced_at: string | null;
}

export interface Attention {
  readonly level: "now" | "soon" | "note";
  readonly text: string;
}

export interface SquadLine extends Named {
  readonly last_heard_at: string | null;
  readonly block: Named | null;
  readonly revision: number | null;
  readonly states: Stages;
  readonly next: {
    readonly session: string;
    readonly name: string;
    readonly week_name: string;
    readonly day: number;
  } | null;
  readonly devices: number;
  readonly unplaced: number;
  readonly attention: readonly Attention[];
}

export interface MaximumNow {
  readonly lift: string;
  readonly name: string;
  readonly kg: number;
  readonly low_kg: number;
  readonly high_kg: number;
  readonly source: string;
}

export interface Device extends Named {
  readonly last_used_at: string | null;
  readonly revoked_at: string | null;
}

export interface AthletePage extends Named {
  readonly document: Athlete;
  readonly kit: Kit | null;
  readonly block: Named | null;
  readonly revision: number | null;
  readonly maxima: readonly MaximumNow[];
  readonly devices: readonly Device[];
  readonly screening: { readonly state: "not-asked"; readonly text: string };
}

export interface Invitation {
  readonly id: string;
  readonly created_at: string;
  readonly expires_at: string;
  readonly used_at: string | null;
  readonly revoked_at: string | null;
}

/** Told once, when the invitation is made: the server keeps no copy of the secret. */
export interface NewInvitation {
  readonly id: string;
  readonly url: string;
  /** The same as an SVG picture. */
  readonly qr: string;
  readonly expires_at: string;
}

export interface PairingCode {
  readonly code: string;
  readonly expires_at: string;
}

export interface HeldEntry {
  readonly position: number;
  readonly device: string;
  readonly received_at: string;
  readonly problem: { readonly where: string; readonly what: string; readonly right: string };
  /** The entry as it came; it may be anything. */
  readonly sent: unknown;
}

export interface CatalogueEntry {
  readonly key: string;
  readonly name: string;
  readonly implement: Implement;
  readonly prime: readonly string[];
  readonly helpers: readonly string[];
  readonly needs: readonly string[];
  readonly cues: readonly string[];
  readonly alternatives: readonly string[];
  readonly one_sided: boolean;
  readonly needs_safeties: boolean;
}

export interface BlockLine extends Named {
  readonly updated_at: string;
  readonly weeks: number;
  readonly sessions: number;
}

export interface BlockAnswer {
  readonly id: string;
  readonly document: Block;
  readonly updated_at: string;
}

export interface SavedBlock {
  readonly id: string;
  readonly updated_at: string;
  readonly faults: readonly Fault[];
}

export interface LoadsAnswer {
  readonly faults: readonly Fault[];
  readonly sheets: readonly LoadSheet[];
}

export interface SendAnswer {
  readonly sent: readonly {
    readonly athlete: string;
    readonly revision: number;
    readonly sessions: number;
  }[];
  readonly refused: readonly { readonly athlete: string; readonly faults: readonly Fault[] }[];
}

export interface Planned {
  readonly reps: number | null;
  readonly rir: number | null;
  readonly load_kg: number | null;
  readonly seconds: number | null;
}

export interface Done {
  readonly kind: "done" | "skipped";
  readonly load_kg: number | null;
  readonly reps: number | null;
  readonly rir: number | null;
  readonly seconds: number | null;
  readonly quality: number | null;
  /** What the phone's clock said. */
  readonly at: string;
  readonly two_answers: boolean;
  readonly why: string | null;
  readonly wild: boolean;
}

export interface ResultSet {
  readonly key: string;
  readonly number: number;
  readonly planned: Planned;
  readonly done: Done | null;
}

export interface ResultExercise {
  readonly key: string;
  readonly name: string;
  readonly sets: readonly ResultSet[];
}

export type SessionState = "planned" | "started" | "finished" | "stopped";

export interface ResultSession {
  readonly revision: number;
  readonly session: string;
  readonly name: string;
  readonly week_name: string;
  readonly day: number;
  /** The calendar day that it was planned for. */
  readonly on: string | null;
  readonly state: SessionState;
  readonly started_at: string | null;
  readonly finished_at: string | null;
  readonly rpe: number | null;
  readonly minutes: number | null;
  readonly comment: string | null;
  readonly why_stopped: string | null;
  readonly exercises: readonly ResultExercise[];
}

/** `smooth_*` look back over the whole series; the others knew only what came before. */
export interface TrendPoint {
  readonly on: string;
  readonly kg: number;
  readonly low_kg: number;
  readonly high_kg: number;
  readonly smooth_kg: number;
  readonly low_smooth_kg: number;
  readonly high_smooth_kg: number;
  readonly source: string;
}

export interface Trend {
  readonly lift: string;
  readonly name: string;
  readonly points: readonly TrendPoint[];
}
