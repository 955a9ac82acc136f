/**
 * What is left to do once Vite has written the app: the index, the service worker, the size report.
 * @module
 */
import { resolve } from "node:path";

import { buildWorker } from "./precache.js";
import { nameFirstLoad } from "./preload.js";
import { measure, report } from "./size.js";

/** @returns {import("vite").Plugin} */
export function finishPlugin() {
  /** @type {import("vite").ResolvedConfig} */ let config;
  return {
    name: "undercroft-finish",
    apply: "build",
    configResolved(resolved) {
      config = resolved;
    },
    async closeBundle(error) {
      if (error) return;
      const outDir = resolve(config.root, config.build.outDir);
      nameFirstLoad(outDir);
      await buildWorker(config.root, outDir);
      config.logger.info(`\n${report(measure(outDir))}`);
    },
  };
}
