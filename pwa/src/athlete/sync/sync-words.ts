/** The state of the exchange with the server in plain words. */
import { DAY_MS, MINUTE_MS } from "../../offline/clock";
import type { Kept } from "../../offline/database";
import type { PhoneState } from "../../offline/phone";
import { count } from "../words/sets";
import { moment } from "../words/times";

export type SyncMood = "sent" | "waiting" | "trouble";

interface SyncWords {
  readonly mood: SyncMood;
  /** One glance. */
  readonly short: string;
  /** One line. */
  readonly long: string;
}

/** A clock further off than this is said to the athlete. */
const CLOCK_OFF_MS = 5 * MINUTE_MS;

/** What the athlete did and the server lacks; that a session was looked at is nothing they did. */
export function unsentOf(state: Pick<PhoneState, "entries" | "identity">): Kept[] {
  const athlete = state.identity?.athlete.id;
  return state.entries.filter(
    (kept) => kept.outbox && kept.athlete === athlete && kept.entry.kind !== "session.opened",
  );
}

/** "12 sets", "12 sets and 1 more entry", "1 entry" */
export function unsentInWords(unsent: readonly Kept[]): string {
  const sets = new Set(unsent.filter(isSet).map(({ entry }) => `${entry.session} ${entry.set}`));
  const more = unsent.filter((kept) => !isSet(kept)).length;
  if (sets.size === 0) return count(more, "entry", "entries");
  const rest = more === 0 ? "" : ` and ${count(more, "more entry", "more entries")}`;
  return count(sets.size, "set") + rest;
}

function isSet({ entry }: Kept): boolean {
  return entry.kind.startsWith("set.");
}

/** What a screen reader says of the sign holds, word for word, what the eye reads (WCAG 2.5.3). */
export function nameOfSign({ mood, short, long }: SyncWords): string {
  const told = mood === "sent" || long.startsWith(`${short} `);
  return told ? `Sync: ${long}` : `Sync: ${short}, ${long}`;
}

/** When the oldest of these was recorded, by this phone's clock. */
export function sinceOf(unsent: readonly Kept[]): number {
  return Math.min(...unsent.map(({ entry }) => Date.parse(entry.at)));
}

/** What waits for longer than this is better handed over by file. */
const OVERDUE_MS = 3 * DAY_MS;

export function isOverdue(unsent: readonly Kept[], now: number): boolean {
  return unsent.length > 0 && now - sinceOf(unsent) >= OVERDUE_MS;
}

export function syncInWords(state: PhoneState, now: number): SyncWords {
  const failed = state.unsaved.filter((each) => each.failed).length;
  if (failed > 0) {
    const what = `${count(failed, "entry", "entries")} not saved`;
    const long = `${what} yet: keep this page open and try again.`;
    return { mood: "trouble", short: what, long };
  }
  const unsent = unsentOf(state);
  const kept = unsent.length === 0 ? "" : `${unsentInWords(unsent)} on this phone only`;
  if (state.identity?.erased) {
    const long = `Your coach has erased what the server had of you. What this phone holds stays.${kept ? ` ${kept}.` : ""}`;
    return { mood: "trouble", short: "Erased", long };
  }
  if (state.identity?.refused) {
    const why = state.identity.revoked ? "Your coach has unpaired this phone. " : "";
    const long = `${why}Pair this phone again; everything is kept.${kept ? ` ${kept}.` : ""}`;
    return { mood: "trouble", short: "Pair again", long };
  }
  if (kept !== "") {
    return {
      mood: "waiting",
      short: String(unsent.length),
      long: `${kept}, ${lastSent(state, now)}`,
    };
  }
  return { mood: "sent", ...allSent(state, now) };
}

/** What goes on while something waits; empty where there is nothing to say. */
export function exchangeInWords(state: PhoneState): string {
  if (unsentOf(state).length === 0) return "";
  if (state.sync.running) return "Sending now.";
  const { last } = state.sync;
  return last?.is === "failed" && last.why === "no answer" ? "Waiting for a network." : "";
}

function lastSent({ notes }: PhoneState, now: number): string {
  return notes.lastSentAt ? `last sent ${moment(notes.lastSentAt, now)}` : "nothing sent yet";
}

function allSent({ notes }: PhoneState, now: number): Omit<SyncWords, "mood"> {
  if (!notes.lastAnswerAt) return { short: "Not asked yet", long: "No answer from the server yet" };
  return { short: "All sent", long: `All sent, checked ${moment(notes.lastAnswerAt, now)}` };
}

/** "This phone's clock is 12 minutes slow", or null where it is right enough. */
export function clockInWords({ notes }: Pick<PhoneState, "notes">): string | null {
  const off = notes.clockOff ?? 0;
  if (Math.abs(off) <= CLOCK_OFF_MS) return null;
  const minutes = Math.round(Math.abs(off) / MINUTE_MS);
  return `This phone's clock is ${lengthInWords(minutes)} ${off > 0 ? "slow" : "fast"}. Set it right; nothing is lost.`;
}

function lengthInWords(minutes: number): string {
  if (minutes < 120) return `${minutes} minutes`;
  const hours = Math.round(minutes / 60);
  return hours < 72 ? `${hours} hours` : `${Math.round(hours / 24)} days`;
}
