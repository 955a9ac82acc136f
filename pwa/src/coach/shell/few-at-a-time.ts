/** Asks a question when its turn comes. */
export type Turns = <T>(question: () => Promise<T>) => Promise<T>;

/**
 * Turns for at most so many questions at once. Thirty asked together would wait in the browser, and
 * the last ones run out of patience before the server has heard of them.
 */
export function fewAtATime(most: number): Turns {
  const waiting: (() => void)[] = [];
  let asking = 0;
  return async (question) => {
    if (asking < most) asking += 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
    try {
      return await question();
    } finally {
      const next = waiting.shift();
      if (next) next();
      else asking -= 1;
    }
  };
}
