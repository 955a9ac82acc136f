/** Moments in words, in the reader's own time zone. */

/** Milliseconds since 1970, or ISO 8601 with its offset. */
export type Moment = number | string;

export const DAYS = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
] as const;

const DAY_MS = 86_400_000;

export function dayName(number: number): string {
  return DAYS[number - 1] ?? `day ${number}`;
}

export function dayShort(number: number): string {
  return dayName(number).slice(0, 3);
}

export function clock(at: Moment): string {
  return new Date(at).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
}

export function date(at: Moment): string {
  const written = { day: "numeric", month: "short", year: "numeric" } as const;
  return new Date(at).toLocaleDateString("en-GB", written);
}

/** "today", "yesterday", "Tuesday" within the last week, else the date. */
export function day(at: Moment, now: Moment): string {
  const days = daysBetween(at, now);
  if (days === 0) return "today";
  if (days === 1) return "yesterday";
  if (days === -1) return "tomorrow";
  if (days > 1 && days < 7) return dayName(new Date(at).getDay() || 7);
  return date(at);
}

export function dayAndClock(at: Moment, now: Moment): string {
  return `${day(at, now)} ${clock(at)}`;
}

/** Whole days between two moments, by the calendar. */
export function daysBetween(from: Moment, to: Moment): number {
  return Math.round((midnight(to) - midnight(from)) / DAY_MS);
}

/** A calendar day, "2026-03-31", as it is written; it has no time zone. */
export function calendarDate(iso: string): string {
  const written = { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" } as const;
  return new Date(`${iso}T00:00:00Z`).toLocaleDateString("en-GB", written);
}

/** A calendar day without its year, "31 Mar", where there is little room. */
export function dayAndMonth(iso: string): string {
  const written = { day: "numeric", month: "short", timeZone: "UTC" } as const;
  return new Date(`${iso}T00:00:00Z`).toLocaleDateString("en-GB", written);
}

/** "today", "tomorrow", else the day of a plan with its date, "Mon 23 Nov". */
export function dueOn(iso: string, now: Moment): string {
  if (iso === isoDay(now)) return "today";
  if (daysBetween(now, `${iso}T00:00:00`) === 1) return "tomorrow";
  return `${dayShort(new Date(`${iso}T00:00:00Z`).getUTCDay() || 7)} ${dayAndMonth(iso)}`;
}

/** A calendar day as ISO 8601, in the reader's own time zone. */
export function isoDay(at: Moment): string {
  const moment = new Date(at);
  const two = (number: number) => String(number).padStart(2, "0");
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

function midnight(at: Moment): number {
  return new Date(at).setHours(0, 0, 0, 0);
}

/** The Monday of the week that the moment is in, as ISO 8601. */
export function mondayOf(at: Moment): string {
  const moment = new Date(at);
  moment.setDate(moment.getDate() - ((moment.getDay() + 6) % 7));
  return isoDay(moment.getTime());
}
