/** What the phone and the server say to each other: pairing, the exchange, the feed. */
import type { Kit, LoadSheet } from "./types";

export interface FeedItem {
  /** Per athlete; given by the server, rising. */
  readonly position: number;
  readonly kind: string;
  readonly key: string;
  readonly body: unknown;
}

export interface PlannedSession {
  readonly session: string;
  readonly name: string;
  readonly week: string;
  readonly week_name: string;
  readonly day: number;
}

export interface RevisionNews {
  readonly number: number;
  readonly block_name: string;
  readonly sent_at: number;
  readonly sessions: readonly PlannedSession[];
  readonly changes?: readonly string[];
}

export interface TrackerNews {
  readonly lift: string;
  readonly name: string;
  readonly kg: number;
  readonly low_kg: number;
  readonly high_kg: number;
  readonly at: number;
}

export interface MessageNews {
  readonly text: string;
  readonly at: number;
  readonly from: string;
}

export interface AthleteNews {
  readonly id: string;
  readonly name: string;
  readonly coach: string;
  readonly pounds?: boolean;
}

/** The kinds of the feed that this app shows. */
export interface News {
  revision: RevisionNews;
  sheet: LoadSheet;
  "sheet.withdrawn": unknown;
  kit: Kit;
  tracker: TrackerNews;
  message: MessageNews;
  athlete: AthleteNews;
}

export type Verdict = "stored" | "duplicate" | "held";

export interface VerdictFor {
  readonly id: string;
  readonly status: Verdict;
  readonly position?: number | null;
  readonly problem?: unknown;
}

export interface SyncRequest {
  readonly device: string;
  readonly epoch: string;
  readonly cursor: number;
  readonly entries: readonly unknown[];
}

export interface SyncAnswer {
  readonly epoch: string;
  readonly verdicts: readonly VerdictFor[];
  readonly stored_through: number;
  readonly feed: readonly FeedItem[];
  readonly cursor: number;
  readonly more?: boolean;
  /** Milliseconds since 1970, UTC, or the same as ISO text. */
  readonly server_time: number | string;
}

export interface Snapshot {
  readonly epoch: string;
  readonly cursor: number;
  readonly feed: readonly FeedItem[];
  readonly stored_through: number;
  readonly server_time: number | string;
}

/** How an invitation is named: the link's secret or the typed code. */
export type Way = { readonly secret: string } | { readonly code: string };

export interface Invitation {
  readonly coach: string;
  readonly athlete: string;
  readonly expires_at: number;
}

export interface PairingCode {
  readonly code: string;
  readonly expires_at: number;
}

export interface Paired {
  readonly device: string;
  readonly athlete: { readonly id: string; readonly name: string };
  readonly coach: string;
  readonly epoch: string;
  readonly cursor: number;
}
