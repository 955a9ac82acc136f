import { defineConfig } from "vite";

import { finishPlugin } from "./tools/finish-plugin.js";

const server = process.env["UNDERCROFT_URL"] ?? "http://127.0.0.1:8000";

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  plugins: [finishPlugin()],
  server: { proxy: { "/api": server } },
  build: {
    outDir: "../server/undercroft/web",
    emptyOutDir: true,
    manifest: true,
    // The server forbids inline scripts and data: addresses of scripts and styles.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
