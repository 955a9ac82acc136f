/** What a method says of a set beside its target. */
import type { SheetExercise } from "../../../api/types";
import { openSides } from "../../../offline/plan";
import { minutesSeconds } from "../../words/times";
import type { AtHand } from "../at-hand";
import { heldAt } from "../rig-view";
import { rule } from "./details";
import { tempoInWords } from "./tempo";

/** A rest from here on is a full recovery: about 7 to 10 min after a maximal sprint (common practice). */
const FULL_RECOVERY_S = 420;

export function linesOf(here: AtHand): string[] {
  return [...methodLines(here), ...roundLine(here)];
}

function methodLines(here: AtHand): string[] {
  const { exercise } = here;
  const tempo = rule(exercise, "lowering_s");
  const cluster = rule(exercise, "block_rest_s");
  return [
    ...holdLines(exercise),
    ...(tempo ? [tempoInWords(tempo)] : []),
    ...(cluster ? [`${cluster.block_rest_s} s between blocks`] : []),
    ...sideLines(here),
    ...attemptLines(here),
    ...recoveryLines(exercise),
  ];
}

function holdLines(exercise: SheetExercise): string[] {
  const position = heldAt(exercise);
  if (position === null) return [];
  const each = rule(exercise, "per_rep")?.per_rep ? "Each rep held " : "Held ";
  return [each + placeInWords(position)];
}

/** 0 is the start of the lift, 1 its end. */
export function placeInWords(position: number): string {
  if (position <= 0.05) return "at the start of the lift";
  if (position >= 0.95) return "at the end of the lift";
  if (Math.abs(position - 0.5) <= 0.05) return "halfway through the lift";
  return `${Math.round(position * 100)} % of the way through the lift`;
}

function sideLines({ exercise, side, record, answer }: AtHand): string[] {
  if (!side) return [];
  const knee = rule(exercise, "knee_down")?.knee_down;
  const down = knee === "same" ? side : side === "left" ? "right" : "left";
  const second = openSides(exercise, record).length === 1 && !answer;
  const which = `${side === "left" ? "Left" : "Right"} side${second ? " now" : ""}`;
  return [knee ? `${which}, ${down} knee down` : which];
}

function attemptLines({ exercise, set }: AtHand): string[] {
  if (exercise.method !== "maximum-test") return [];
  const reps = rule(exercise, "attempts")?.reps ?? 1;
  const place = exercise.sets.indexOf(set) + 1;
  const what = reps > 1 ? `, ${reps} reps with nothing in reserve` : "";
  return [`Attempt ${place} of ${exercise.sets.length}${what}`];
}

function recoveryLines({ method, rest }: SheetExercise): string[] {
  if (method !== "timed" || !rest) return [];
  const range = `${minutesSeconds(rest.from_s)} to ${minutesSeconds(rest.to_s)}`;
  return [`${rest.from_s >= FULL_RECOVERY_S ? "Full recovery" : "Rest"} after it: ${range}`];
}

/** "A1 then A2, round 2 of 3" */
function roundLine({ view, exercise, set }: AtHand): string[] {
  if (exercise.group === undefined) return [];
  const together = view.exercises.filter(({ group }) => group === exercise.group);
  if (together.length < 2) return [];
  const names = together.map((_, index) => `${exercise.group}${index + 1}`);
  const here = names[together.indexOf(exercise)];
  const rounds = Math.max(...together.map(({ sets }) => sets.length));
  const round = exercise.sets.indexOf(set) + 1;
  return [`${names.join(" then ")}, round ${round} of ${rounds}: now ${here}`];
}
