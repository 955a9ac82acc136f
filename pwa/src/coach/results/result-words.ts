/** Planned and done, in words and figures. */
import { figure, kilos } from "../block/wish-words";
import type { Done, Planned, ResultSession } from "../answers";
import { calendarDate, date, dayName, isoDay } from "../shell/when";

/** "87.5 kg × 3, 4 RIR" or "30 s"; a dash where nothing was planned. */
export function plannedInWords(planned: Planned): string {
  const end = planned.to_failure ? "to failure" : "";
  return [amount(planned), end].filter(Boolean).join(", ") || "—";
}

export function doneInWords(done: Done, method = ""): string {
  if (done.kind === "skipped") return done.why ? `skipped: ${done.why}` : "skipped";
  if (isAttempt(done, method)) return `${load(done)} ${done.reps ? "made" : "missed"}`.trim();
  const quality = done.quality === null ? "" : `quality ${done.quality} of 5`;
  const failure = done.to_failure ? "to failure" : "";
  const felt = done.tightness === null ? "" : `tightness ${figure(done.tightness)} of 10`;
  const parts = [done.side ?? "", amount(done), failure, quality, speed(done), felt];
  return parts.filter(Boolean).join(", ") || "done";
}

/** A single of a maximum test; more repetitions are told like any others. */
function isAttempt({ reps, rir }: Done, method: string): boolean {
  return method === "maximum-test" && rir === null && (reps === 0 || reps === 1);
}

/** "0.84 0.82 0.80 m/s, mean 0.82" */
function speed({ velocities_m_s, mean_m_s }: Done): string {
  if (mean_m_s === null) return "";
  const each = velocities_m_s.map((velocity) => velocity.toFixed(2)).join(" ");
  return velocities_m_s.length > 1 ? `${each} m/s, mean ${mean_m_s.toFixed(2)}` : `${each} m/s`;
}

type Amount = Pick<Planned, "load_kg" | "reps" | "rir" | "seconds" | "distance_m" | "blocks">;

function load({ load_kg }: Pick<Amount, "load_kg">): string {
  return load_kg === null ? "" : `${kilos(load_kg)} kg`;
}

function amount(set: Amount): string {
  const far = set.distance_m === null ? "" : `${figure(set.distance_m)} m`;
  const held = set.seconds === null ? "" : `${figure(set.seconds)} s`;
  const [first = "", ...others] = [repetitions(set), far, held].filter(Boolean);
  const work = [load(set), first].filter(Boolean).join(" × ");
  const rir = set.rir === null ? "" : `${figure(set.rir)} RIR`;
  return [work, ...others, rir].filter(Boolean).join(", ");
}

/** "2 + 2 + 2" in blocks; "5", or "5 reps" where no load stands before it. */
function repetitions({ reps, blocks, load_kg }: Amount): string {
  if (blocks.length > 0) return blocks.join(" + ");
  if (reps === null) return "";
  return load_kg === null ? `${reps} ${reps === 1 ? "rep" : "reps"}` : `${reps}`;
}

/** What differs from the plan, "+2.5 kg, −1 rep"; nothing where it was met. */
export function differenceInWords(planned: Planned, done: Done, method = ""): string {
  if (done.kind === "skipped") return "";
  if (isAttempt(done, method)) return difference(planned.load_kg, done.load_kg, "kg");
  const parts = [
    difference(planned.load_kg, done.load_kg, "kg"),
    difference(planned.reps ?? total(planned.blocks), done.reps ?? total(done.blocks), "reps"),
    difference(planned.rir, done.rir, "RIR"),
    difference(planned.seconds, done.seconds, "s"),
    difference(planned.distance_m, done.distance_m, "m"),
  ];
  return parts.filter(Boolean).join(", ");
}

function total(blocks: readonly number[]): number | null {
  return blocks.length > 0 ? blocks.reduce((sum, reps) => sum + reps, 0) : null;
}

function difference(planned: number | null, done: number | null, unit: string): string {
  if (planned === null || done === null || Math.abs(done - planned) < 0.005) return "";
  const more = done - planned;
  const word = unit === "reps" && Math.abs(more) === 1 ? "rep" : unit;
  return `${more > 0 ? "+" : ""}${unit === "kg" ? kilos(more) : figure(more)} ${word}`;
}

export type Standing =
  | "ahead"
  | "today"
  | "silent"
  | "missed"
  | "under way"
  | "finished"
  | "stopped";

/**
 * How a session stands. One whose day has passed is missed only where the phone was heard after
 * that day; else nothing is known of it, because silence is not absence.
 */
export function standingOf(
  session: ResultSession,
  heardAt: string | null,
  today: string,
): Standing {
  if (session.state === "started") return "under way";
  if (session.state !== "planned") return session.state;
  if (session.on === null || session.on > today) return "ahead";
  if (session.on === today) return "today";
  return heardAt !== null && isoDay(heardAt) > session.on ? "missed" : "silent";
}

export const STANDINGS: Readonly<Record<Standing, string>> = {
  ahead: "ahead",
  today: "due today",
  silent: "not heard from since",
  missed: "missed: the phone was heard since, and it was not begun",
  "under way": "under way",
  finished: "finished",
  stopped: "stopped",
};

/** "Build 1, Tuesday 3 Feb 2026". */
export function whenInWords(session: ResultSession): string {
  const on = session.on === null ? "" : ` ${calendarDate(session.on)}`;
  return `${session.week_name}, ${dayName(session.day)}${on}${otherDay(session)}`;
}

/** The day that it was done on, where that is not the one it was planned for. */
function otherDay({ on, finished_at, started_at }: ResultSession): string {
  const done = finished_at ?? started_at;
  if (done === null || on === null || isoDay(done) === on) return "";
  return `, done on ${date(done)}`;
}

/** "RPE 7, 58 minutes" as far as it was said. */
export function effortInWords(session: Pick<ResultSession, "rpe" | "minutes">): string {
  const parts = [
    session.rpe === null ? "" : `RPE ${figure(session.rpe)} of 10`,
    session.minutes === null ? "" : `${figure(session.minutes)} minutes`,
  ];
  return parts.filter(Boolean).join(", ");
}
