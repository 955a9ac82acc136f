/**
 * The notch walk: the server's tracker in whole numbers, walked without the server.
 *
 * Look-ups and whole numbers only; every gain was worked out before by
 * `undercroft.domain.strength`. The vectors in `fixtures/notch-walks` hold the two together, so a
 * change here is a change there. All divisions round half away from zero.
 */

/** Per mille of a difference that go to level, form and tilt. */
type Gain = readonly [number, number, number];

/** The server's answers for one lift in one session; in tenths of a notch unless said. */
export interface NotchTable {
  readonly lift: string;
  /** Strength at the start of the session, drift included. */
  readonly level: number;
  /** 0: form is drawn anew in every session. */
  readonly form: number;
  /** Notch of the first entry of each set's ladder. */
  readonly base: number;
  readonly drift: number;
  /** Of each set that gives evidence, in plan order ("turn"): sets of a kind weigh alike. */
  readonly kind: readonly number[];
  /** Of each turn, the n that its load is reckoned at (1 for a share of the maximum). */
  readonly at: readonly number[];
  readonly gain: Readonly<Record<string, Gain>>;
  /** Gains had no set of the sessions before been done; empty where it is no matter. */
  readonly missed: Readonly<Record<string, Gain>>;
  /** Points that the sessions before tell of the level when done to plan. */
  readonly told: number;
  /** Per mille of the way from `gain` to `missed` when 0, 1 … 10 tenths of them are told. */
  readonly less: readonly number[];
  /** Points that this session tells after 0, 1, 2 … sets. */
  readonly tells: readonly number[];
  /** For n = 1 … 15, from a load to the level that it speaks for. */
  readonly offset: readonly number[];
  /** For n = 1 … 15, what a tilt of 1 moves a load by. */
  readonly lean: readonly number[];
  /** Largest difference that is believed. */
  readonly gate: number;
  /** What a suggestion may rise by, in notches. */
  readonly rise: { readonly per_set: number; readonly in_all: number };
  /** The coach wants the plan as written. */
  readonly hold?: boolean;
}

/** Where a walk stands: level and form in tenths of a notch, tilt per mille. */
export interface WalkState {
  readonly level: number;
  readonly form: number;
  readonly tilt: number;
  /** Points of the sessions before that the server did not know. */
  readonly told: number;
  /** Per mille of the way to the missed gains that follow from it. */
  readonly less: number;
  readonly fromLevel: number;
  readonly fromTilt: number;
  /** Notches that the next suggestion may lie above what the session began with. */
  readonly allowed: number;
  /** Sets of evidence so far, by kind. */
  readonly done: readonly number[];
  /** The last difference was beyond the gate. */
  readonly wild: boolean;
}

/** A set's loads as the sheet has them: `ladder[i]` is the load for notch `base + i`. */
export interface Ladder {
  readonly ladder: readonly number[];
  readonly cap?: number | null;
}

type Reason = "hold" | "upper-bound" | "end-of-table" | "rise-limited" | "up" | "same" | "down";

/** The load to show beside the plan: an index into the exercise's loads, its notch, and why. */
export interface Suggestion {
  readonly index: number;
  readonly notch: number;
  readonly reason: Reason;
}

const TENTHS = 10;
const PER_MILLE = 1000;

function entry(values: readonly number[], index: number, name: string): number {
  const value = values[index];
  if (value === undefined) {
    throw new RangeError(`${name}: no entry ${index}; there are ${values.length}`);
  }
  return value;
}

/** value / by, rounded half away from zero; never -0. */
function quotient(value: number, by: number): number {
  const half = Math.floor((2 * Math.abs(value) + by) / (2 * by));
  return value >= 0 || half === 0 ? half : -half;
}

/** The value for n = 1, 2 …; half a repetition is the mean of its neighbours, rounded. */
function atN(values: readonly number[], n: number): number {
  const halves = Math.min(Math.max(Math.floor(2 * n + 0.5), 2), 2 * values.length);
  const whole = Math.floor(halves / 2);
  const low = entry(values, whole - 1, "n");
  return halves % 2 === 0 ? low : quotient(low + entry(values, whole, "n"), 2);
}

/**
 * n = reps + reserve where an outcome says something about the maximum, else null: it needs
 * repetitions, a reserve (or failure), and n from 1 to 15. Its set must have a turn, too.
 */
export function evidenceN(reps: number, rir: number | null, toFailure: boolean): number | null {
  const reserve = toFailure ? 0 : rir;
  if (reserve === null || !(reps > 0 && reserve >= 0)) return null;
  const n = reps + reserve;
  return n >= 1 && n <= 15 ? n : null;
}

/** The walk at the start of a session, as the server knew the athlete. */
export function begin(table: NotchTable): WalkState {
  return start(table, table.level, 0, 0);
}

/**
 * The walk at the start of the next session, with what the server did not know of this one.
 *
 * `known` is the state of this session's walk from which the following table was worked out:
 * `begin(table)` where no set of it had reached the server.
 */
export function carry(
  table: NotchTable,
  state: WalkState,
  known: WalkState,
  following: NotchTable,
): WalkState {
  const told = state.told + tells(table, state) - known.told - tells(table, known);
  const level = following.level + state.level - known.level;
  return start(following, level, state.tilt - known.tilt, told);
}

function start(table: NotchTable, level: number, tilt: number, told: number): WalkState {
  return {
    level,
    form: table.form,
    tilt,
    told,
    less: lessOf(table, told),
    fromLevel: level,
    fromTilt: tilt,
    allowed: 0,
    done: Array.from({ length: Math.max(-1, ...table.kind) + 1 }, () => 0),
    wild: false,
  };
}

function tells(table: NotchTable, state: WalkState): number {
  const sets = state.done.reduce((sum, count) => sum + count, 0);
  return entry(table.tells, Math.min(sets, table.tells.length - 1), "tells");
}

/** Read off `less` at the share told, linear between its tenths. */
function lessOf(table: NotchTable, told: number): number {
  const last = table.less.length - 1;
  if (told >= table.told) return entry(table.less, last, "less");
  const scaled = Math.max(0, told) * last;
  const place = Math.floor(scaled / table.told);
  const low = entry(table.less, place, "less");
  const high = entry(table.less, place + 1, "less");
  return low + quotient((high - low) * (scaled % table.told), table.told);
}

/** Tenths of a notch by which a set of n repetitions at that place beats what was expected. */
export function difference(
  state: WalkState,
  table: NotchTable,
  position: number,
  n: number,
): number {
  const leaning = quotient(state.tilt * atN(table.lean, n), PER_MILLE);
  return position + atN(table.offset, n) - state.level - state.form - leaning;
}

/**
 * One step: the evidence of a turn, done at a position on the scale for n = reps + reserve.
 *
 * A turn that was skipped is simply not walked. A set beyond the plan has a turn beyond it and
 * weighs as the plan's last one; with no turn planned nothing moves.
 */
export function walk(
  state: WalkState,
  table: NotchTable,
  turn: number,
  position: number,
  n: number,
): WalkState {
  if (table.kind.length === 0) return state;
  const last = Math.min(turn, table.kind.length - 1);
  const kind = entry(table.kind, last, "turn");
  const found = difference(state, table, position, n);
  const held = Math.min(Math.max(found, -table.gate), table.gate);
  const [level, form, tilt] = gainOf(state, table, turn, kind).map((part) =>
    quotient(part * held, PER_MILLE),
  ) as [number, number, number];
  const risen = riseOf(state, table, entry(table.at, last, "turn"));
  return {
    ...state,
    level: state.level + level,
    form: state.form + form,
    tilt: state.tilt + tilt,
    allowed: Math.min(table.rise.in_all, risen + table.rise.per_set),
    done: state.done.map((count, one) => (one === kind ? count + 1 : count)),
    wild: found !== held,
  };
}

/** The gain of a turn; more sets than the plan has before it count as all that it has. */
function gainOf(state: WalkState, table: NotchTable, turn: number, kind: number): number[] {
  const before = table.kind.slice(0, turn);
  const counts = state.done.map((count, one) =>
    Math.min(count, before.filter((other) => other === one).length),
  );
  const key = `${counts.join(".")}:${kind}`;
  const planned = table.gain[key];
  if (planned === undefined) throw new RangeError(`${table.lift}: no gain ${key}`);
  const missed = table.missed[key] ?? planned;
  return planned.map(
    (one, part) => one + quotient(state.less * (entry(missed, part, key) - one), PER_MILLE),
  );
}

function notchAt(table: NotchTable, strength: number, tilt: number, n: number): number {
  return quotient(strength + quotient(tilt * atN(table.lean, n), PER_MILLE), TENTHS);
}

function beganAt(state: WalkState, table: NotchTable, n: number): number {
  return notchAt(table, state.fromLevel, state.fromTilt, n);
}

function wantedAt(state: WalkState, table: NotchTable, n: number): number {
  return notchAt(table, state.level + state.form, state.tilt, n);
}

function riseOf(state: WalkState, table: NotchTable, n: number): number {
  return Math.min(wantedAt(state, table, n) - beganAt(state, table, n), state.allowed);
}

/** The n that a set's load is reckoned at: its turn's, or 1 for a share of the maximum. */
export function reckonedAt(table: NotchTable, turn: number | null | undefined): number {
  return turn === null || turn === undefined ? 1 : entry(table.at, turn, "turn");
}

/**
 * The next load for a set whose load is reckoned at n.
 *
 * It rises by at most so many notches a set and in all above the session's beginning, falls
 * freely, and never passes the set's upper bound. On hold it is the sheet's own load.
 */
export function suggest(state: WalkState, table: NotchTable, set: Ladder, n: number): Suggestion {
  const top = set.ladder.length - 1;
  if (table.hold === true) return within(set, Math.floor(top / 2), table.base, "hold");
  const began = beganAt(state, table, n);
  const rise = riseOf(state, table, n);
  const place = began + rise - table.base;
  const held = Math.min(Math.max(place, 0), top);
  if (held !== place) return within(set, held, table.base, "end-of-table");
  const limited = rise < wantedAt(state, table, n) - began;
  return within(set, held, table.base, limited ? "rise-limited" : direction(rise));
}

function direction(rise: number): Reason {
  if (rise === 0) return "same";
  return rise > 0 ? "up" : "down";
}

function within(set: Ladder, place: number, base: number, reason: Reason): Suggestion {
  const index = entry(set.ladder, place, "ladder");
  const cap = set.cap ?? null;
  if (cap !== null && index > cap) {
    return { index: cap, notch: base + place, reason: "upper-bound" };
  }
  return { index, notch: base + place, reason };
}
