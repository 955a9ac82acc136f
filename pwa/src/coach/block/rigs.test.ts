import { describe, expect, it } from "vitest";

import type { Rig } from "../../api/types";
import { isTaken, namesThings, soughtFor, withoutThings, withPart } from "./rigs";

const OFFER: Rig = {
  part: "bands",
  share_percent: 25,
  route: "inverted-v",
  things: ["thin-left", "thin-right", "pegs"],
};

describe("a rig", () => {
  it("begins with a fifth of the day's load", () => {
    expect(withPart(undefined, "bands")).toEqual({ part: "bands", share_percent: 20 });
  });

  it("keeps its share and point when bands become chains, and nothing that only bands know", () => {
    expect(withPart({ ...OFFER, point: "mean", assists: true }, "chains")).toEqual({
      part: "chains",
      share_percent: 25,
      point: "mean",
    });
  });

  it("is left to each kit by dropping the names of things", () => {
    expect(withoutThings(OFFER)).toEqual({
      part: "bands",
      share_percent: 25,
      route: "inverted-v",
    });
    expect([OFFER, withoutThings(OFFER)].map(namesThings)).toEqual([true, false]);
  });
});

describe("what is looked for", () => {
  it("is the share alone once a rig was taken, so that the others stay in sight", () => {
    expect(soughtFor({ ...OFFER, per_side: 2 })).toEqual({ part: "bands", share_percent: 25 });
  });

  it("is led as the coach says where nothing was taken", () => {
    const plan = withoutThings(OFFER);
    expect(soughtFor(plan)).toBe(plan);
  });
});

describe("an offer", () => {
  it("is taken where the plan names its things, whatever their order and the share", () => {
    const plan: Rig = { ...OFFER, share_percent: 30, things: ["pegs", "thin-right", "thin-left"] };
    expect(isTaken(plan, OFFER)).toBe(true);
  });

  it("is not taken where they are led in another way, or left to the kit", () => {
    expect(isTaken({ ...OFFER, route: "doubled" }, OFFER)).toBe(false);
    expect(isTaken(withoutThings(OFFER), OFFER)).toBe(false);
  });
});
