/** Times and days in words. */
import { DAY_MS, SECOND_MS } from "../../offline/clock";

const DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];

/** 1 is Monday. */
export function dayName(day: number): string {
  return DAYS[day - 1] ?? "";
}

/** 1 is Monday, by this phone's calendar. */
function dayOfWeek(ms: number): number {
  return ((new Date(ms).getDay() + 6) % 7) + 1;
}

/** The calendar day in this phone's time zone, as 2026-02-03. */
export function isoDay(ms: number): string {
  const date = new Date(ms);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** "18:40" */
export function clockTime(ms: number): string {
  return new Date(ms).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
}

/** "today 18:40", "yesterday 18:40", "Tuesday 18:40", "3 February". */
export function moment(ms: number, now: number): string {
  return daysBetween(ms, now) > 6 ? dateName(ms) : `${relativeDay(ms, now)} ${clockTime(ms)}`;
}

/** "today", "yesterday", "Tuesday", "3 February". */
export function relativeDay(ms: number, now: number): string {
  const days = daysBetween(ms, now);
  if (days === 0) return "today";
  if (days === 1) return "yesterday";
  if (days === -1) return "tomorrow";
  return Math.abs(days) < 7 ? dayName(dayOfWeek(ms)) : dateName(ms);
}

function dateName(ms: number): string {
  return new Date(ms).toLocaleDateString([], { day: "numeric", month: "long" });
}

/** Midnights between both moments: positive where the first lies back. */
export function daysBetween(ms: number, now: number): number {
  return Math.round((Date.parse(isoDay(now)) - Date.parse(isoDay(ms))) / DAY_MS);
}

/** A calendar day as a moment of it that no time zone moves to another day. */
export function noonOf(day: string): number {
  return new Date(`${day}T12:00:00`).getTime();
}

/** Minutes and seconds, as on a clock: "1:15". */
export function minutesSeconds(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/** "40 s", "1 min 30 s" */
export function duration(seconds: number): string {
  if (seconds < 90) return `${seconds} s`;
  const rest = seconds % 60;
  return `${Math.floor(seconds / 60)} min${rest === 0 ? "" : ` ${rest} s`}`;
}

export function minutesSince(ms: number, now: number): number {
  return Math.max(0, Math.round((now - ms) / (60 * SECOND_MS)));
}
