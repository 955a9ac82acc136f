import { describe, expect, it } from "vitest";

import { beginning, changed, redone, undone } from "./history";

describe("undo", () => {
  it("goes back through at least twenty changes, one by one, and forward again", () => {
    let history = beginning(0);
    for (let step = 1; step <= 25; step += 1) history = changed(history, step, "", step);
    for (let step = 24; step >= 0; step -= 1) {
      history = undone(history);
      expect(history.present).toBe(step);
    }
    expect(undone(history)).toBe(history);
    for (let step = 1; step <= 25; step += 1) history = redone(history);
    expect(history.present).toBe(25);
    expect(redone(history)).toBe(history);
  });

  it("takes back a word typed without a pause in one step", () => {
    let history = beginning("");
    for (const [at, text] of ["L", "Lo", "Low"].entries()) {
      history = changed(history, text, "session name", at * 200);
    }
    expect(undone(history).present).toBe("");
  });

  it("keeps what was typed after a pause as a step of its own", () => {
    const typed = changed(beginning(""), "Low", "session name", 0);
    expect(undone(changed(typed, "Lower", "session name", 10_000)).present).toBe("Low");
  });

  it("keeps changes of different fields apart, however quick", () => {
    const one = changed(beginning("0"), "1", "reps", 0);
    expect(undone(changed(one, "2", "percent", 1)).present).toBe("1");
  });

  it("does not join what is typed after an undo to what was typed before it", () => {
    const typed = changed(changed(beginning("a"), "b", "", 0), "c", "name", 1);
    const again = changed(undone(typed), "d", "name", 2);
    expect(undone(again).present).toBe("b");
  });

  it("forgets what was undone as soon as something else is written", () => {
    const back = undone(changed(beginning("a"), "b", "", 0));
    expect(redone(changed(back, "c", "", 1)).present).toBe("c");
  });

  it("counts no step where nothing changed", () => {
    const start = beginning("a");
    expect(changed(start, "a", "name", 0)).toBe(start);
  });
});
