import { describe, expect, it } from "vitest";

import { dayAt, dayMarks } from "./day-marks";

describe("days under a plot", () => {
  it("are written from the first one on, as many as there is room for", () => {
    const marks = dayMarks("2026-02-02", "2026-03-02");
    expect(marks(450).map((mark) => mark.text)).toEqual([
      "2 Feb",
      "9 Feb",
      "16 Feb",
      "23 Feb",
      "2 Mar",
    ]);
    expect(marks(180).map((mark) => mark.text)).toEqual(["2 Feb", "2 Mar"]);
  });

  it("stand at their own place whatever the reader's time zone", () => {
    const [first] = dayMarks("2026-02-02", "2026-02-02")(300);
    expect(first?.at).toBe(dayAt("2026-02-02"));
  });
});
