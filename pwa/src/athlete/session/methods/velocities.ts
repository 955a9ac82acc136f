/** Velocities of a set's reps as they are tapped in, in steps of 0.01 m/s. */
import { is, type SetDone } from "../../../offline/entry";
import type { AtHand } from "../at-hand";

/** Where nothing is known yet; a usual speed set lies near it. Our own choice. */
const FIRST = 0.6;
const MOST = 10;

/** With a rep moved by so many hundredths of a m/s. */
export function withVelocity(done: SetDone, rep: number, hundredths: number): SetDone {
  const velocities = [...(done.velocities_m_s ?? [])];
  const moved = Math.round((velocities[rep] ?? FIRST) * 100) + hundredths;
  velocities[rep] = Math.min(MOST * 100, Math.max(0, moved)) / 100;
  return { ...done, velocities_m_s: velocities };
}

/** What a rep begins with when it is first tapped: the rep before it, else that rep of the last set. */
function firstGuess({ view, exercise }: AtHand, done: SetDone, rep: number): number {
  const before = done.velocities_m_s?.[rep - 1];
  if (before !== undefined) return before;
  const last = view.answered.findLast(({ exercise: { key } }) => key === exercise.key)?.entry;
  const told = last && is(last, "set.done") ? last.body.velocities_m_s : undefined;
  return told?.[rep] ?? told?.at(-1) ?? FIRST;
}

/** Filled in up to this rep; the ones left out before it take its own first guess. */
export function filledTo(here: AtHand, done: SetDone, rep: number): SetDone {
  let filled = done;
  for (let each = filled.velocities_m_s?.length ?? 0; each <= rep; each += 1) {
    const guess = firstGuess(here, filled, each);
    filled = { ...filled, velocities_m_s: [...(filled.velocities_m_s ?? []), guess] };
  }
  return filled;
}
