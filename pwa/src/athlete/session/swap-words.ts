import type { Use } from "../../offline/swaps";

/** How an athlete would say that it fails: "Broken: red band", "Taken: steel bar". */
export function failureInWords({ kind, name }: Use): string {
  if (kind === "ceiling") return "Ceiling too low";
  return kind === "bands" || kind === "chains" ? `Broken: ${name}` : `Taken: ${name}`;
}
