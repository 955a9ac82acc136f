/** Where one athlete's own block says otherwise than the block beneath it, and the way back. */
import type { Block, ExercisePlan, SessionPlan, SetPlan, Week } from "../../api/types";
import { alike } from "../block/alike";
import { linesOf, type Line } from "../block/lines";
import { inserted } from "../block/lists";
import { METHOD_NAMES } from "../block/methods";
import { lineInWords, restInWords } from "../block/wish-words";

const NO_STARTS: ReadonlySet<string> = new Set();

interface Keyed {
  readonly key: string;
}

export function sessionBeneath(block: Block, key: string): SessionPlan | undefined {
  return block.weeks.flatMap((week) => week.sessions).find((each) => each.key === key);
}

export function exerciseBeneath(
  block: Block,
  session: string,
  key: string,
): ExercisePlan | undefined {
  return sessionBeneath(block, session)?.exercises.find((each) => each.key === key);
}

/** What the block says of the sets of this line; null where it says the same. */
export function lineBeneath(line: Line, base: ExercisePlan): string | null {
  const was = line.sets.flatMap((set) => base.sets.find((each) => each.key === set.key) ?? []);
  if (alike(was, line.sets)) return null;
  return was.length > 0 ? setsInWords(was) : "no such sets";
}

/** The sets with those of the line as the block has them; those that it lacks go. */
export function lineBack(sets: readonly SetPlan[], line: Line, base: ExercisePlan): SetPlan[] {
  const own = new Set(line.sets.map((set) => set.key));
  return sets.flatMap((set) =>
    own.has(set.key) ? (base.sets.find((each) => each.key === set.key) ?? []) : [set],
  );
}

/** What the block says around the sets of an exercise, and of sets that are not there. */
export function aroundBeneath(
  plan: ExercisePlan,
  base: ExercisePlan,
  nameOf: (exercise: string) => string,
): string[] {
  const { exercise, method, rest, cue, sets, ...others } = base;
  const { exercise: _, method: __, rest: ___, cue: ____, sets: _____, ...own } = plan;
  return [
    exercise === plan.exercise ? "" : nameOf(exercise),
    method === plan.method ? "" : METHOD_NAMES[method],
    alike(keysOf(sets), keysOf(plan.sets)) ? "" : setsInWords(sets),
    alike(rest, plan.rest) ? "" : rest ? restInWords(rest) : "no rest said",
    (cue ?? "") === (plan.cue ?? "") ? "" : cue ? `“${cue}”` : "no cue",
    alike(others, own) ? "" : "other details",
  ].filter(Boolean);
}

/** What the block has and the athlete does not. */
export function leftOut<T extends Keyed>(own: readonly T[], base: readonly T[]): T[] {
  const keys = new Set(keysOf(own));
  return base.filter(({ key }) => !keys.has(key));
}

/** The list with one that was left out again in its place. */
export function putBack<T extends Keyed>(own: readonly T[], base: readonly T[], key: string): T[] {
  const at = base.findIndex((each) => each.key === key);
  const item = base[at];
  if (item === undefined) return [...own];
  const before = new Set(keysOf(base.slice(0, at)));
  const after = own.findLastIndex((each) => before.has(each.key));
  return inserted(own, after + 1, item);
}

export function weekBeneath(block: Block, week: Week | undefined): Week | undefined {
  return block.weeks.find((each) => each.key === week?.key);
}

export function setsInWords(sets: readonly SetPlan[]): string {
  const lines = linesOf(sets, NO_STARTS);
  return lines.map((line) => lineInWords(line.sets.length, line.asks)).join(", ");
}

function keysOf(all: readonly Keyed[]): string[] {
  return all.map(({ key }) => key);
}
