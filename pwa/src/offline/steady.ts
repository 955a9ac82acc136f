/**
 * Time for clocks: the time of day without the jumps of the phone's clock that were noticed. As long as the
 * page lives, the browser's own count tells them; across reloads their sum is kept.
 */
import { type Clock, SECOND_MS } from "./clock";

/** What runs on whatever becomes of the phone's clock, as long as the page lives. */
export interface Count {
  /** Milliseconds since the page began; in many browsers they stand still while the phone sleeps. */
  readonly ms: () => number;
  /** The page is out of view, so that the phone may be asleep. */
  readonly away: () => boolean;
}

/** What became of the phone's clock since the app is on it. */
export interface Jumps {
  /** All jumps together: forward counts as more. */
  readonly byMs: number;
  /** When a clock was set back out of view, on the steady clock: sleep at that time is in no count. */
  readonly lostAt: number | null;
}

export const NO_JUMPS: Jumps = { byMs: 0, lostAt: null };

/** One moment on both clocks. */
export interface Times {
  /** The time of day, as this phone believes. */
  readonly now: number;
  readonly steady: number;
  readonly lostAt: number | null;
}

export interface Steady {
  readonly times: () => Times;
  readonly jumps: () => Jumps;
  /** Takes over what was kept, or what another page has noticed. */
  readonly adopt: (jumps: Jumps) => void;
}

interface Parts {
  readonly clock: Clock;
  readonly count: Count;
  readonly onJump: () => void;
}

interface Mark {
  readonly now: number;
  readonly ms: number;
  readonly away: boolean;
}

/**
 * A clock that ran ahead while the page was away is taken for sleep, which looks the same: a rest goes by the
 * time of day then, and is over too early at worst. Everything else is a jump.
 */
export function createSteady({ clock, count, onJump }: Parts): Steady {
  let jumps = NO_JUMPS;
  let last: Mark | null = null;

  function mark(): Mark {
    const before = last;
    const here = { now: clock.now(), ms: count.ms(), away: count.away() };
    last = here;
    const away = here.away || (before?.away ?? false);
    const jump = before ? here.now - before.now - (here.ms - before.ms) : 0;
    const asleep = jump > 0 && away;
    if (Math.abs(jump) < SECOND_MS || asleep) return here;
    const byMs = jumps.byMs + jump;
    jumps = { byMs, lostAt: away ? here.now - byMs : jumps.lostAt };
    onJump();
    return here;
  }

  return {
    times() {
      const { now } = mark();
      return { now, steady: now - jumps.byMs, lostAt: jumps.lostAt };
    },
    jumps: () => jumps,
    adopt(kept) {
      const before = jumps;
      mark();
      // A jump that is noticed only now is in no notes yet.
      if (jumps === before) jumps = kept;
    },
  };
}
