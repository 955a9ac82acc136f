/** A block sent to one athlete after the other, so that it is seen how far it has come. */
import type { SendAnswer } from "../answers";
import { merged } from "./stops";

export const NOBODY_YET: SendAnswer = { sent: [], refused: [] };

/**
 * `onAnswer` is told after each one what has come of all so far; where one sending fails, that of
 * those before stands. Resolves to what came of all.
 */
export async function oneByOne(
  athletes: readonly string[],
  sendTo: (athlete: string) => Promise<SendAnswer>,
  onAnswer: (soFar: SendAnswer) => void,
  before: SendAnswer = NOBODY_YET,
): Promise<SendAnswer> {
  let soFar = before;
  for (const athlete of athletes) {
    soFar = added(soFar, await sendTo(athlete));
    onAnswer(soFar);
  }
  return soFar;
}

/** Those who were answered for are not asked again. */
export function unanswered(athletes: Iterable<string>, soFar: SendAnswer): string[] {
  const done = new Set([...soFar.sent, ...soFar.refused].map(({ athlete }) => athlete));
  return [...athletes].filter((athlete) => !done.has(athlete));
}

export function answeredCount({ sent, refused }: SendAnswer): number {
  return sent.length + refused.length;
}

/** Someone refused for the first time is not in the list that `merged` replaces in. */
function added(before: SendAnswer, after: SendAnswer): SendAnswer {
  const known = new Set(before.refused.map(({ athlete }) => athlete));
  const both = merged(before, after);
  const fresh = after.refused.filter(({ athlete }) => !known.has(athlete));
  return { ...both, refused: [...both.refused, ...fresh] };
}
