/**
 * The phone's first load against its budget: `npm run size` after a build; exits with 1 when over.
 * @module
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";

import { DESK, ENTRY, firstLoad, PHONE, readManifest } from "./first-load.js";

export const BUDGET_BYTES = 45_000;

/**
 * @param {string} outDir
 * @returns {{ files: { file: string, gzip: number }[], total: number, desk: number, over: boolean }}
 */
export function measure(outDir) {
  const manifest = readManifest(outDir);
  const phone = new Set([...firstLoad(manifest, ENTRY), ...firstLoad(manifest, PHONE)]);
  const desk = [...firstLoad(manifest, DESK)].filter((file) => !phone.has(file));
  const files = scriptsAndStyles(phone).map((file) => ({ file, gzip: gzipBytes(outDir, file) }));
  const total = sum(files.map((each) => each.gzip));
  const deskTotal = sum(scriptsAndStyles(desk).map((file) => gzipBytes(outDir, file)));
  return { files, total, desk: deskTotal, over: total > BUDGET_BYTES };
}

/** @param {ReturnType<typeof measure>} measured @returns {string} */
export function report({ files, total, desk, over }) {
  const rows = files.map(({ file, gzip }) => `  ${kilobytes(gzip)}  ${file}`);
  const verdict = over ? "over" : "within";
  return [
    "The phone's first load, gzip:",
    ...rows,
    `  ${kilobytes(total)}  in all, ${verdict} the budget of ${kilobytes(BUDGET_BYTES).trim()}`,
    `  ${kilobytes(desk)}  more for the desk, fetched only there`,
  ].join("\n");
}

/** @param {Iterable<string>} files */
function scriptsAndStyles(files) {
  return [...files].filter((file) => /\.(js|css)$/.test(file)).sort();
}

/** @param {string} outDir @param {string} file */
function gzipBytes(outDir, file) {
  return gzipSync(readFileSync(join(outDir, file)), { level: 9 }).length;
}

/** @param {number[]} numbers */
function sum(numbers) {
  return numbers.reduce((total, each) => total + each, 0);
}

/** @param {number} bytes */
function kilobytes(bytes) {
  return `${(bytes / 1000).toFixed(1).padStart(6)} kB`;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const measured = measure(join(import.meta.dirname, "../../server/undercroft/web"));
  console.log(report(measured));
  process.exitCode = measured.over ? 1 : 0;
}
