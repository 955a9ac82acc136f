/**
 * What a page has to fetch before it can work, read from the manifest that Vite leaves beside a build.
 * @module
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";

/** @typedef {import("vite").Manifest} Manifest */

export const ENTRY = "index.html";
export const PHONE = "src/athlete/index.tsx";
export const DESK = "src/coach/index.tsx";

/** @param {string} outDir @returns {Manifest} */
export function readManifest(outDir) {
  return JSON.parse(readFileSync(join(outDir, ".vite/manifest.json"), "utf8"));
}

/**
 * Scripts and styles that load when `root` is opened, without what it only imports on demand.
 * @param {Manifest} manifest @param {string} root @returns {Set<string>}
 */
export function firstLoad(manifest, root) {
  return collect(manifest, root, () => false);
}

/**
 * Every file that `root` can ever come to ask for, lazily imported ones included, save through `closed`.
 * @param {Manifest} manifest @param {string} root @param {string} [closed] @returns {Set<string>}
 */
export function reachable(manifest, root, closed) {
  return collect(manifest, root, (key) => key !== closed);
}

/**
 * @param {Manifest} manifest @param {string} root @param {(key: string) => boolean} follow
 * @returns {Set<string>}
 */
function collect(manifest, root, follow) {
  /** @type {Set<string>} */ const files = new Set();
  /** @type {Set<string>} */ const seen = new Set();
  const waiting = [root];
  for (let key = waiting.pop(); key !== undefined; key = waiting.pop()) {
    if (seen.has(key)) continue;
    seen.add(key);
    const chunk = manifest[key];
    if (!chunk) throw new Error(`the build has no chunk for ${key}`);
    for (const file of [chunk.file, ...(chunk.css ?? []), ...(chunk.assets ?? [])]) files.add(file);
    waiting.push(...(chunk.imports ?? []), ...(chunk.dynamicImports ?? []).filter(follow));
  }
  return files;
}
