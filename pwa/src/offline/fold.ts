/**
 * The ledger folded: what was done, whatever the order in which entries came and however often. The
 * same fold as the server's `domain/ledger.py`; the vectors in `fixtures/ledgers` hold them together.
 */
import { type Bodies, type Draft, type Of, type Side, SIDES } from "./entry";
import { grouped } from "./grouped";
import { byId, heads } from "./heads";

export type Answer = Of<"set.done"> | Of<"set.skipped">;

/** What became of a set; a cleared set has no record. */
export interface SetRecord {
  /** The later one's where left and right were told apart. */
  readonly entry: Answer;
  readonly sides: ReadonlyMap<Side, Answer>;
  /** Two phones gave different answers; the one with the greatest id counts. */
  readonly conflict: boolean;
  /** The exercise to which the athlete added this set; null for a set of the plan. */
  readonly addedTo: string | null;
  /** Id of its first answer, which no correction changes. */
  readonly first: string;
  /** The same side by side. */
  readonly firsts: ReadonlyMap<Side | null, string>;
}

export interface SessionRecord {
  readonly revision: number | null;
  readonly session: string;
  readonly opened: readonly Draft[];
  readonly started: readonly Draft[];
  readonly finished: Of<"session.finished"> | null;
  readonly stopped: Of<"session.stopped"> | null;
  readonly sets: ReadonlyMap<string, SetRecord>;
  /** By `answerKey`, the answer that counts, a clearing among them: what a correction replaces. */
  readonly answers: ReadonlyMap<string, string>;
  /** Exercise by key of each set that the athlete added, done or not. */
  readonly added: ReadonlyMap<string, string>;
  /** By exercise, what was done instead. */
  readonly swaps: ReadonlyMap<string, string>;
  /** By exercise, all its swaps in order. */
  readonly swapped: ReadonlyMap<string, readonly Of<"exercise.swapped">[]>;
  /** Keys of the sets with two answers. */
  readonly conflicts: readonly string[];
}

const SET_ANSWERS: ReadonlySet<string> = new Set(["set.done", "set.skipped", "set.cleared"]);

/** Sessions by revision and key, in the order in which their first entry stands. */
export function fold(entries: readonly Draft[]): SessionRecord[] {
  const once = [...new Map(entries.map((entry) => [entry.id, entry])).values()];
  const inSessions = once.filter((entry) => entry.session !== null);
  const groups = grouped(inSessions, sessionKey);
  return [...groups.values()].map(foldSession);
}

function sessionKey({ revision, session }: Draft): string {
  return `${revision ?? ""} ${session ?? ""}`;
}

function foldSession(entries: readonly Draft[]): SessionRecord {
  const kind = (name: string) => entries.filter((entry) => entry.kind === name);
  return {
    revision: entries[0]?.revision ?? null,
    session: entries[0]?.session ?? "",
    opened: heads(kind("session.opened")),
    started: heads(kind("session.started")),
    finished: greatest(kind("session.finished") as Of<"session.finished">[]),
    stopped: greatest(kind("session.stopped") as Of<"session.stopped">[]),
    swaps: foldSwaps(kind("exercise.swapped")),
    swapped: foldSwapped(kind("exercise.swapped")),
    ...foldSets(entries.filter((e) => e.kind === "set.added" || SET_ANSWERS.has(e.kind))),
  };
}

function foldSets(
  entries: readonly Draft[],
): Pick<SessionRecord, "sets" | "answers" | "added" | "conflicts"> {
  const sets = new Map<string, SetRecord>();
  const counted = new Map<string, string>();
  const added = new Map<string, string>();
  const conflicts: string[] = [];
  const groups = [...grouped(entries, (entry) => entry.set ?? "")].sort(byKey);
  for (const [key, group] of groups) {
    const left = heads(group);
    const addition = left.findLast((entry) => entry.kind === "set.added");
    if (addition) added.set(key, (addition.body as Bodies["set.added"]).exercise);
    const bySide = grouped(
      left.filter((entry) => SET_ANSWERS.has(entry.kind)),
      sideOf,
    );
    const conflict = differ(bySide);
    if (conflict) conflicts.push(key);
    const last = new Map([...bySide].map(([side, answers]) => [side, answers.at(-1)]));
    for (const [side, entry] of last) if (entry) counted.set(answerKey(key, side), entry.id);
    const told = recordOf(last);
    if (told) {
      const firsts = firstsOf(group);
      const first = firsts.get(sideOf(told.entry)) ?? told.entry.id;
      sets.set(key, { ...told, conflict, addedTo: added.get(key) ?? null, first, firsts });
    }
  }
  return { sets, answers: counted, added, conflicts };
}

/** Left and right of a one-sided set are two questions. */
export function answerKey(set: string, side: Side | null): string {
  return side ? `${set} ${side}` : set;
}

function sideOf({ body }: Draft): Side | null {
  const { side } = body as { readonly side?: unknown };
  return SIDES.find((each) => each === side) ?? null;
}

/** Two answers for one side, or one for a side beside one for the whole set. */
function differ(bySide: ReadonlyMap<Side | null, readonly Draft[]>): boolean {
  return (
    [...bySide.values()].some(({ length }) => length > 1) || (bySide.has(null) && bySide.size > 1)
  );
}

function recordOf(
  last: ReadonlyMap<Side | null, Draft | undefined>,
): Pick<SetRecord, "entry" | "sides"> | null {
  const standing = [...last].filter(([, entry]) => entry && entry.kind !== "set.cleared") as [
    Side | null,
    Answer,
  ][];
  const entry = standing
    .map(([, each]) => each)
    .sort(byId)
    .at(-1);
  if (!entry) return null;
  const sided = standing.filter((each): each is [Side, Answer] => each[0] !== null);
  return { entry, sides: new Map(sided.sort(byKey)) };
}

/** By side, the first answer since the set was last cleared. */
function firstsOf(group: readonly Draft[]): Map<Side | null, string> {
  const firsts = new Map<Side | null, string>();
  for (const entry of group.filter(({ kind }) => SET_ANSWERS.has(kind)).sort(byId)) {
    const side = sideOf(entry);
    if (entry.kind === "set.cleared") firsts.delete(side);
    else if (!firsts.has(side)) firsts.set(side, entry.id);
  }
  return firsts;
}

function foldSwapped(entries: readonly Draft[]): Map<string, Of<"exercise.swapped">[]> {
  const groups = grouped(entries as readonly Of<"exercise.swapped">[], ({ body }) => body.exercise);
  return new Map([...groups].map(([exercise, group]) => [exercise, heads(group)]));
}

/** A swap back to the exercise itself is no swap. */
function foldSwaps(entries: readonly Draft[]): Map<string, string> {
  const swaps = new Map<string, string>();
  const swapped = entries as readonly Of<"exercise.swapped">[];
  const groups = [...grouped(swapped, (entry) => entry.body.exercise)].sort(byKey);
  for (const [exercise, group] of groups) {
    const instead = greatest(group)?.body.to ?? exercise;
    if (instead !== exercise) swaps.set(exercise, instead);
  }
  return swaps;
}

function greatest<E extends Draft>(entries: readonly E[]): E | null {
  return heads(entries).at(-1) ?? null;
}

function byKey([one]: readonly [string, unknown], [other]: readonly [string, unknown]): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}
