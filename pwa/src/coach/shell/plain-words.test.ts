import { describe, expect, it } from "vitest";

import { NoAnswer, Refused } from "../../api/client";
import { inPlainWords } from "./plain-words";

function refused(detail: string, faults = 0, wait: number | null = null): Refused {
  const fault = { where: "bar 1", path: "bars.0", what: "missing", right: "it is needed" };
  const errors = Array.from({ length: faults }, () => fault);
  return new Refused({ type: "", title: "No", status: 422, detail, errors }, wait);
}

describe("what went wrong", () => {
  it("is the server's own sentence, begun and ended as one", () => {
    expect(inPlainWords(refused("there is no such block"))).toBe("There is no such block.");
  });

  it("says how long to wait where the server wants to be left alone", () => {
    expect(inPlainWords(refused("too often", 0, 30))).toBe("Too often. Try again in 30 s.");
    expect(inPlainWords(refused("too often; wait 30 s", 0, 30))).toBe("Too often; wait 30 s.");
  });

  it("leads over to the list of faults where there is one", () => {
    expect(inPlainWords(refused("…", 1))).toBe("One thing has to be put right:");
    expect(inPlainWords(refused("…", 3))).toBe("3 things have to be put right:");
  });

  it("is silence where nothing came back", () => {
    expect(inPlainWords(new NoAnswer())).toBe("The server does not answer.");
  });
});
