/**
 * Builds `src/worker.ts` into `/worker.js` once the app is on disk, and tells it by name and content
 * which files make up the phone's app and which belong to the desk alone.
 * @module
 */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { build } from "vite";

import { DESK, ENTRY, reachable, readManifest } from "./first-load.js";

/** Vite's own notes, and pictures that only the home screen shows. */
const NOT_KEPT = /^\.|^icons\/.*\.png$/;

/** @typedef {{ url: string, revision: string | null, integrity: string }} PrecacheEntry */

/**
 * @param {string} outDir
 * @returns {{ phone: PrecacheEntry[], desk: string[] }} The phone's files, kept from the first visit
 *   on, and the addresses of those that only the desk asks for.
 */
export function precacheLists(outDir) {
  const manifest = readManifest(outDir);
  const phone = reachable(manifest, ENTRY, DESK);
  const desk = [...reachable(manifest, DESK)].filter((file) => !phone.has(file));
  const left = new Set([...desk, "worker.js"]);
  const files = listFiles(outDir).filter((file) => !left.has(file) && !NOT_KEPT.test(file));
  return {
    phone: files.sort().map((file) => precacheEntry(outDir, file)),
    desk: desk.sort().map((file) => `/${file}`),
  };
}

/**
 * The integrity makes the worker's installation fail as a whole where something on the way answers
 * in the server's place, or a file is of another build.
 * @param {string} outDir @param {string} file @returns {PrecacheEntry}
 */
function precacheEntry(outDir, file) {
  const hash = createHash("sha256")
    .update(readFileSync(join(outDir, file)))
    .digest("base64");
  return {
    url: file === "index.html" ? "/" : `/${file}`,
    revision: file.startsWith("assets/") ? null : hash.slice(0, 12),
    integrity: `sha256-${hash}`,
  };
}

/** @param {string} outDir */
function listFiles(outDir) {
  return readdirSync(outDir, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => relative(outDir, join(each.parentPath, each.name)).split(sep).join("/"));
}

/** @param {string} root @param {string} outDir */
export async function buildWorker(root, outDir) {
  const { phone, desk } = precacheLists(outDir);
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: "warn",
    define: { PHONE_FILES: JSON.stringify(phone), DESK_FILES: JSON.stringify(desk) },
    build: {
      outDir,
      emptyOutDir: false,
      modulePreload: false,
      rolldownOptions: {
        input: join(root, "src/worker.ts"),
        output: { format: "iife", entryFileNames: "worker.js" },
      },
    },
  });
}
