import { describe, expect, it } from "vitest";

import { covers } from "../shell/right";
import { givesInWords, namesInWords } from "./right-words";

describe("a right", () => {
  it("holds the lesser ones", () => {
    expect(covers("own", "write")).toBe(true);
    expect(covers("write", "read")).toBe(true);
    expect(covers("read", "write")).toBe(false);
  });
});

describe("a link in words", () => {
  it("says what it gives", () => {
    expect(givesInWords({ gives: "read", keeps: null })).toBe("may read");
  });

  it("says what whoever hands over keeps", () => {
    expect(givesInWords({ gives: "own", keeps: null })).toBe("takes over; you keep nothing");
    expect(givesInWords({ gives: "own", keeps: "read" })).toBe(
      "takes over; you keep the right to read",
    );
  });

  it("names two athletes and counts the others", () => {
    expect(namesInWords(["Runa"])).toBe("Runa");
    expect(namesInWords(["Runa", "Aada"])).toBe("Runa and Aada");
    expect(namesInWords(["Runa", "Aada", "Nils", "Tove"])).toBe("Runa, Aada and 2 more");
  });
});
