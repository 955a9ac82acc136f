// @vitest-environment node
import { createHash } from "node:crypto";
import { expect, test } from "vitest";

import { precacheLists } from "../../tools/precache.js";
import { writeBuild } from "./build-fixture";

function sha256(text: string): string {
  return `sha256-${createHash("sha256").update(text).digest("base64")}`;
}

test("the worker keeps the phone's files and knows the desk's by name only", () => {
  const { phone, desk } = precacheLists(writeBuild());
  expect(phone.map((entry) => entry.url)).toEqual([
    "/assets/athlete-1.css",
    "/assets/athlete-1.js",
    "/assets/index-1.js",
    "/assets/kit-1.js",
    "/assets/parts-1.js",
    "/icons/icon.svg",
    "/",
  ]);
  expect(desk).toEqual(["/assets/coach-1.css", "/assets/coach-1.js"]);
});

test("each kept file is known by its content, so that a stranger's answer is refused", () => {
  const { phone } = precacheLists(writeBuild());
  const chunk = phone.find((entry) => entry.url === "/assets/kit-1.js");
  expect(chunk?.integrity).toBe(sha256("assets/kit-1.js"));
});

test("the index gets another revision when its content changes, a hashed file needs none", () => {
  const index = (html: string) =>
    precacheLists(writeBuild({ "index.html": html })).phone.find((entry) => entry.url === "/");
  expect(index("<p>one</p>")?.revision).not.toBe(index("<p>two</p>")?.revision);
  expect(index("<p>one</p>")?.revision).toBe(index("<p>one</p>")?.revision);
  const { phone } = precacheLists(writeBuild());
  const hashed = phone.filter((entry) => entry.url.startsWith("/assets/"));
  expect(hashed.map((entry) => entry.revision)).toEqual([null, null, null, null, null]);
});
