/**
 * Names the phone's scripts and styles in the index, so that a first visit fetches them beside the
 * entry and not after it. The desk's are left out: a phone never fetches them.
 * @module
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

import { ENTRY, firstLoad, PHONE, readManifest } from "./first-load.js";

/** @param {string} outDir */
export function nameFirstLoad(outDir) {
  const path = join(outDir, "index.html");
  const html = readFileSync(path, "utf8");
  const manifest = readManifest(outDir);
  const named = firstLoad(manifest, ENTRY);
  const links = [...firstLoad(manifest, PHONE)].filter((file) => !named.has(file)).flatMap(link);
  writeFileSync(
    path,
    html.replace("  </head>", () => `${links.join("")}  </head>`),
  );
}

/** @param {string} file @returns {string[]} */
function link(file) {
  const kind = file.endsWith(".js") ? 'rel="modulepreload"' : 'rel="preload" as="style"';
  return /\.(js|css)$/.test(file) ? [`    <link ${kind} crossorigin href="/${file}">\n`] : [];
}
