// @vitest-environment node
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

import { DESK, ENTRY, firstLoad, PHONE, reachable } from "../../tools/first-load.js";
import { nameFirstLoad } from "../../tools/preload.js";
import { MANIFEST, writeBuild } from "./build-fixture";

test("the phone's first load is its chunk, its style and what it shares", () => {
  expect([...firstLoad(MANIFEST, PHONE)].toSorted()).toEqual([
    "assets/athlete-1.css",
    "assets/athlete-1.js",
    "assets/parts-1.js",
  ]);
});

test("opening the app loads neither side before the address has been read", () => {
  expect([...firstLoad(MANIFEST, ENTRY)]).toEqual(["assets/index-1.js"]);
});

test("a phone can come to ask for its own late screens, never for the desk", () => {
  const phone = reachable(MANIFEST, ENTRY, DESK);
  expect(phone).toContain("assets/kit-1.js");
  expect(phone).not.toContain("assets/coach-1.js");
  expect(phone).not.toContain("assets/coach-1.css");
});

test("a side that the build does not hold is an error that names it", () => {
  expect(() => firstLoad({}, PHONE)).toThrow("src/athlete/index.tsx");
});

test("the index names the phone's files beforehand and none of the desk's", () => {
  const outDir = writeBuild();
  nameFirstLoad(outDir);
  const html = readFileSync(join(outDir, "index.html"), "utf8");
  expect(html).toContain('<link rel="modulepreload" crossorigin href="/assets/athlete-1.js">');
  expect(html).toContain(
    '<link rel="preload" as="style" crossorigin href="/assets/athlete-1.css">',
  );
  expect(html).not.toContain("coach");
});
