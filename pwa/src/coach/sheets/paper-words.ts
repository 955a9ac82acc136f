/** A load sheet in words for paper: what is asked, what hangs there, what to write down. */
import type { LoadSheet, SheetExercise, SheetSet } from "../../api/types";
import { figure, kilos } from "../block/wish-words";
import { counted } from "../shell/counted";
import { calendarDate } from "../shell/when";
import { madeOf } from "../writer/outcome";

type Target = SheetSet["target"];

/** "5 reps, 3 in reserve", "30 reps, on to failure", "40 s". */
export function askedInWords(target: Target, method: string): string {
  const { reps, rir, seconds, distance_m, blocks = [], to_failure = false } = target;
  const parts = [
    blocks.length > 0 ? `blocks of ${blocks.join(" + ")}` : reps ? counted(reps, "rep") : "",
    seconds ? `${figure(seconds)} s` : "",
    distance_m ? `${figure(distance_m)} m` : "",
    to_failure ? (reps ? "on to failure" : "to failure") : "",
    rir === undefined || to_failure ? "" : `${figure(rir)} in reserve`,
    method === "one-sided" ? "each side" : "",
  ];
  return parts.filter(Boolean).join(", ") || "as you see fit";
}

interface PaperLoad {
  /** "92.5 kg"; "by feel" where the athlete finds it; empty where nothing is loaded. */
  readonly load: string;
  readonly made: string;
}

export function paperLoad(exercise: SheetExercise, set: SheetSet): PaperLoad {
  const load = set.load === undefined ? undefined : exercise.loads?.[set.load];
  if (load) return { load: `${kilos(load.kg)} kg`, made: madeOf(load, exercise.implement) };
  const found = (exercise.loads?.length ?? 0) > 0;
  return { load: found ? "by feel" : "", made: set.why ?? "" };
}

/** "8 × 33 kg (5 + 1.25 a side)", a warm-up set each. */
export function warmUpInWords(exercise: SheetExercise): string[] {
  return (exercise.ramp ?? []).flatMap((step) => {
    const load = exercise.loads?.[step.load];
    if (!load) return [];
    const made = madeOf(load, exercise.implement);
    return [`${step.reps} × ${kilos(load.kg)} kg${made ? ` (${made})` : ""}`];
  });
}

/** What is written down after a set, one box each. */
export function boxesOf(exercise: SheetExercise): string[] {
  if (exercise.method === "one-sided") return ["Left", "Right", "Reserve"];
  const { seconds, distance_m, reps } = exercise.sets[0]?.target ?? {};
  if (distance_m) return ["Metres", "Seconds"];
  if (seconds && !reps) return ["Seconds"];
  if (exercise.method === "occlusion") return ["Reps", "Tightness"];
  if (exercise.method === "speed") return ["Reps", "Quality 1–5"];
  return ["Reps", "Reserve"];
}

/** "A1", "A2" for those done in turn, else "B", "C" …: how a paper names its exercises. */
export function marksOf(exercises: readonly SheetExercise[]): string[] {
  const letters = new Map<string, string>();
  const places = new Map<string, number>();
  return exercises.map(({ group, key }) => {
    const name = group ?? `alone ${key}`;
    const letter = letters.get(name) ?? letterAt(letters.size);
    letters.set(name, letter);
    if (group === undefined || group === null) return letter;
    const place = (places.get(name) ?? 0) + 1;
    places.set(name, place);
    return `${letter}${place}`;
  });
}

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

function letterAt(place: number): string {
  return ALPHABET[place] ?? `${place + 1}`;
}

/** Weeks in the order of the plan, by key. */
export function weeksOf(sheets: readonly LoadSheet[]): Record<string, string> {
  return Object.fromEntries(sheets.map(({ week, week_name }) => [week, week_name]));
}

/** The first week with a session today or later; the last one where all have passed. */
export function weekAhead(sheets: readonly LoadSheet[], today: string): string {
  const next = sheets.find(({ on }) => typeof on === "string" && on >= today) ?? sheets.at(-1);
  return next?.week ?? "";
}

/** Of an exercise with a wrap or cuff on: how tight, how long, how long off. */
export function wearInWords({ occlusion }: SheetExercise): string[] {
  if (!occlusion) return [];
  const { most_tightness, pressure_mmhg, limit_s, wear_s, break_s } = occlusion;
  return [
    most_tightness ? `Tightness: at most ${most_tightness} of 10.` : "",
    pressure_mmhg ? `Pressure: ${pressure_mmhg} mmHg.` : "",
    `On for about ${minutes(wear_s)}; off after ${minutes(limit_s)} at the latest.`,
    `Then off for at least ${minutes(break_s)}.`,
    occlusion.company ? "Only with somebody there." : "",
    occlusion.until ? `Open until ${calendarDate(occlusion.until)}, by the screening.` : "",
    occlusion.limits ?? "",
  ].filter(Boolean);
}

function minutes(seconds: number): string {
  const [whole, rest] = [Math.floor(seconds / 60), Math.round(seconds % 60)];
  return rest === 0 ? `${whole} min` : `${whole}:${String(rest).padStart(2, "0")} min`;
}
