import { describe, expect, it } from "vitest";

import { fewAtATime } from "./few-at-a-time";

describe("questions that take turns", () => {
  it("are asked two at once, in order, and each gets its own answer", async () => {
    const turns = fewAtATime(2);
    let now = 0;
    let most = 0;
    const ask = (name: string) => async () => {
      now += 1;
      most = Math.max(most, now);
      await Promise.resolve();
      now -= 1;
      return name;
    };
    const answers = await Promise.all(["a", "b", "c", "d", "e"].map((name) => turns(ask(name))));
    expect(answers).toEqual(["a", "b", "c", "d", "e"]);
    expect(most).toBe(2);
  });

  it("go on after one that failed", async () => {
    const turns = fewAtATime(1);
    const fails = turns(() => Promise.reject(new Error("no answer")));
    const next = turns(() => Promise.resolve("here"));
    await expect(fails).rejects.toThrow("no answer");
    await expect(next).resolves.toBe("here");
  });
});
