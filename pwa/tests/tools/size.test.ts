// @vitest-environment node
import { randomBytes } from "node:crypto";
import { gunzipSync, gzipSync } from "node:zlib";
import { expect, test } from "vitest";

import { BUDGET_BYTES, measure, report } from "../../tools/size.js";
import { writeBuild } from "./build-fixture";

/** Text that gzip cannot make much smaller than `bytes`: base64 packs to three quarters. */
function incompressible(bytes: number): string {
  return randomBytes(bytes).toString("base64");
}

test("the sum is what gzip makes of the phone's scripts and styles", () => {
  const script = "let load = 92.5;".repeat(40);
  const measured = measure(writeBuild({ "assets/athlete-1.js": script }));
  const athlete = measured.files.find(({ file }) => file === "assets/athlete-1.js");
  const packed = gzipSync(script, { level: 9 });
  expect(gunzipSync(packed).toString()).toBe(script);
  expect(athlete?.gzip).toBe(packed.length);
  expect(measured.total).toBe(measured.files.reduce((sum, { gzip }) => sum + gzip, 0));
  expect(measured.over).toBe(false);
});

test("a phone's first load over 45 kB is over the budget and is said to be", () => {
  const measured = measure(writeBuild({ "assets/parts-1.js": incompressible(BUDGET_BYTES) }));
  expect(measured.over).toBe(true);
  expect(report(measured)).toContain("over the budget of 45.0 kB");
});

test("however large the desk grows, the phone's budget is untouched", () => {
  const measured = measure(writeBuild({ "assets/coach-1.js": incompressible(BUDGET_BYTES) }));
  expect(measured.over).toBe(false);
  expect(measured.desk).toBeGreaterThan(BUDGET_BYTES);
});
