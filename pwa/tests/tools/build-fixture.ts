import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";

/** A build's manifest: two sides that share a part, and a screen that the phone opens on demand. */
export const MANIFEST = {
  "index.html": {
    file: "assets/index-1.js",
    dynamicImports: ["src/athlete/index.tsx", "src/coach/index.tsx"],
  },
  "src/athlete/index.tsx": {
    file: "assets/athlete-1.js",
    css: ["assets/athlete-1.css"],
    imports: ["_parts.js"],
    dynamicImports: ["src/athlete/kit.tsx"],
  },
  "src/athlete/kit.tsx": { file: "assets/kit-1.js", imports: ["src/athlete/index.tsx"] },
  "src/coach/index.tsx": {
    file: "assets/coach-1.js",
    css: ["assets/coach-1.css"],
    imports: ["_parts.js"],
  },
  "_parts.js": { file: "assets/parts-1.js" },
};

/** Writes that build, each file holding its own name, and returns its folder. */
export function writeBuild(contents: Record<string, string> = {}): string {
  const outDir = mkdtempSync(join(tmpdir(), "undercroft-build-"));
  const named = Object.values(MANIFEST).flatMap((chunk) => [
    chunk.file,
    ...("css" in chunk ? chunk.css : []),
  ]);
  const html = "<html>\n  <head>\n  </head>\n</html>\n";
  const files = { ...Object.fromEntries(named.map((name) => [name, name])), "index.html": html };
  const other = { "worker.js": "", "icons/icon.svg": "<svg/>", "icons/icon-192.png": "png" };
  write(outDir, { ...files, ...other, ".vite/manifest.json": JSON.stringify(MANIFEST) });
  write(outDir, contents);
  return outDir;
}

function write(outDir: string, files: Record<string, string>): void {
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(outDir, name)), { recursive: true });
    writeFileSync(join(outDir, name), content);
  }
}
