import { describe, expect, it } from "vitest";

import type { ScreeningReason } from "../answers";
import { BLANK, clearanceOf, coverable, wantsPrescription } from "./clearance";

function reason(key: string, part: Partial<ScreeningReason> = {}): ScreeningReason {
  return {
    key,
    outcome: "doctor-first",
    words: key,
    opens: "",
    urgent: "",
    coverable: true,
    covered: false,
    ...part,
  };
}

describe("a clearance", () => {
  it("is sent without what was left empty, so that the server asks for it", () => {
    expect(clearanceOf(BLANK)).toEqual({ covers: [], alone: false });
  });

  it("is sent with the limits that the clinician set, and no others", () => {
    const draft = { ...BLANK, by: "Dr. Maro Tellin", limits: { load_percent: 30, in_words: "" } };
    expect(clearanceOf(draft)).toEqual({
      by: "Dr. Maro Tellin",
      covers: [],
      alone: false,
      limits: { load_percent: 30 },
    });
  });

  it("names only what a clearance can name, and each once", () => {
    const reasons = [reason("clot"), reason("unread", { coverable: false }), reason("clot")];
    expect(coverable(reasons).map((one) => one.key)).toEqual(["clot"]);
  });

  it("of a reason for the clinic asks for the clinician's own prescription", () => {
    const reasons = [reason("diabetes"), reason("injury", { outcome: "clinical" })];
    expect(wantsPrescription(reasons, ["diabetes"])).toBe(false);
    expect(wantsPrescription(reasons, ["diabetes", "injury"])).toBe(true);
  });
});
