import { describe, expect, it } from "vitest";

import type { SendAnswer } from "../answers";
import { answeredCount, oneByOne, unanswered } from "./one-by-one";

const sent = (athlete: string): SendAnswer => ({
  sent: [{ athlete, revision: 1, sessions: 6 }],
  refused: [],
});
const refused = (athlete: string): SendAnswer => ({ sent: [], refused: [{ athlete, stops: [] }] });

describe("sending to one after the other", () => {
  it("tells after each how many were answered for", async () => {
    const told: number[] = [];
    const answer = await oneByOne(
      ["runa", "osk", "tilde"],
      (athlete) => Promise.resolve(athlete === "osk" ? refused(athlete) : sent(athlete)),
      (soFar) => told.push(answeredCount(soFar)),
    );
    expect(told).toEqual([1, 2, 3]);
    expect(answer.sent.map(({ athlete }) => athlete)).toEqual(["runa", "tilde"]);
    expect(answer.refused.map(({ athlete }) => athlete)).toEqual(["osk"]);
  });

  it("leaves those who were sent to in what came of it, and the rest to be sent to", async () => {
    const told: SendAnswer[] = [];
    const all = ["runa", "osk", "tilde"];
    const broken = oneByOne(
      all,
      (athlete) =>
        athlete === "osk" ? Promise.reject(new Error("no answer")) : Promise.resolve(sent(athlete)),
      (soFar) => told.push(soFar),
    );
    await expect(broken).rejects.toThrow("no answer");
    const soFar = told.at(-1);
    expect(soFar && unanswered(all, soFar)).toEqual(["osk", "tilde"]);
  });

  it("goes on from what was answered before", async () => {
    const answer = await oneByOne(
      ["osk"],
      (athlete) => Promise.resolve(sent(athlete)),
      () => {},
      sent("runa"),
    );
    expect(answer.sent.map(({ athlete }) => athlete)).toEqual(["runa", "osk"]);
  });
});
