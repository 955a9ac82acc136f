/** What the phone and the server say to each other: pairing, the exchange, the feed. */
import type { Questions, Standing } from "./screening";
import type { Kit, LoadSheet } from "./types";

/** ISO 8601 in UTC, or milliseconds since 1970. */
export type Moment = string | number;

export function toMs(moment: Moment): number {
  return typeof moment === "number" ? moment : Date.parse(moment);
}

export interface FeedItem {
  /** Per athlete; given by the server, rising. */
  readonly position: number;
  readonly kind: string;
  readonly key: string;
  readonly body: unknown;
}

interface PlannedSession {
  readonly session: string;
  readonly name: string;
  readonly week: string;
  readonly week_name: string;
  readonly day: number;
}

export interface RevisionNews {
  readonly number: number;
  /** The first revision of this doing of the block, which may be done more than once. */
  readonly run?: number;
  readonly block_name: string;
  readonly sent_at: Moment;
  readonly sessions: readonly PlannedSession[];
  readonly changes?: readonly string[];
}

export interface TrackerNews {
  readonly lift: string;
  readonly name: string;
  readonly kg: number;
  readonly low_kg: number;
  readonly high_kg: number;
  readonly at: Moment;
}

interface MessageNews {
  readonly text: string;
  readonly at: Moment;
  readonly from: string;
}

/** A photo or clip of an exercise; what stands under a hash never changes. */
export interface PictureNews {
  readonly hash: string;
  readonly media: "image/webp" | "video/mp4";
  readonly bytes: number;
  /** For those who do not see it. */
  readonly words: string;
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
  "tracker.withdrawn": unknown;
  message: MessageNews;
  athlete: AthleteNews;
  /** By exercise, those of the programme. */
  pictures: Readonly<Record<string, PictureNews>>;
  /** Only once the coach has asked for a screening. */
  "screening.questions": Questions;
  screening: Standing;
}

export type Verdict = "stored" | "duplicate" | "held";

/** Why an entry is held; the codes are the server's. */
export interface Trouble {
  readonly code: string;
  readonly where: string;
  readonly what: string;
  readonly right: string;
}

export interface VerdictFor {
  readonly id: string | null;
  readonly status: Verdict;
  readonly position?: number | null;
  readonly problem?: Trouble;
}

export interface SyncRequest {
  readonly device: string;
  readonly epoch: string;
  readonly cursor: number;
  readonly entries: readonly unknown[];
}

interface FeedPage {
  readonly epoch: string;
  readonly stored_through: number;
  readonly feed: readonly FeedItem[];
  /** Ask from here next; below what was sent: take a snapshot. */
  readonly cursor: number;
  readonly more?: boolean;
  readonly server_time: Moment;
}

export interface SyncAnswer extends FeedPage {
  readonly verdicts: readonly VerdictFor[];
  /** The device was unpaired: whatever it sends is held for the coach. */
  readonly revoked?: boolean;
}

/** One page; ask again with `after` as long as there is more. */
export interface Snapshot extends FeedPage {
  readonly device: string;
  readonly athlete: { readonly id: string; readonly name: string };
  readonly coach: string;
}

/** How an invitation is named: the link's secret or the typed code. */
export type Way = { readonly secret: string } | { readonly code: string };

export interface Invitation {
  readonly coach: string;
  readonly athlete: string;
  readonly expires_at: Moment;
}

export interface PairingCode {
  readonly code: string;
  readonly expires_at: Moment;
}

export interface Paired {
  readonly device: string;
  readonly athlete: { readonly id: string; readonly name: string };
  readonly coach: string;
  readonly epoch: string;
  readonly cursor: number;
}

export interface DeviceRenewed {
  readonly device: string;
  readonly epoch: string;
}
