/** Exercises in words. */
import type { CatalogueEntry, ForAthlete } from "../answers";
import { muscleName } from "../monitoring/muscles";

/** "Straight bar, support, bench": what has to stand there. */
export function kitWords({ implement, needs }: CatalogueEntry): string {
  const lifted = IMPLEMENTS[implement];
  return capital([...new Set([lifted, ...needs])].join(", "));
}

export const IMPLEMENTS: Readonly<Record<CatalogueEntry["implement"], string>> = {
  "straight-bar": "straight bar",
  "hex-bar": "hex bar",
  "curl-bar": "curl bar",
  "oscillating-bar": "oscillating bar",
  landmine: "landmine",
  dumbbells: "pair of dumbbells",
  dumbbell: "dumbbell",
  stack: "stack",
  body: "own body",
  band: "band",
};

/** "Quads, glutes"; "" for none. */
export function muscleWords(muscles: readonly string[]): string {
  return capital(muscles.map((one) => muscleName(one).toLowerCase()).join(", "));
}

/** "Front shoulder" as the server names it. */
export function muscleKey(name: string): string {
  return name.trim().toLowerCase().replaceAll(/\s+/g, "-");
}

/** Whether it can be done there: "all here", "lacks box", "hurts: left knee". */
export function hereWords({ lacking, avoid }: ForAthlete): string {
  const lacks = lacking.length > 0 ? [`lacks ${lacking.join(", ")}`] : [];
  const hurts = avoid.length > 0 ? [`to be avoided: ${avoid.join(", ")}`] : [];
  return [...hurts, ...lacks].join("; ") || "all here";
}

/** 74 as "74 cm", 71.2 as "71.2 cm". */
export function centimetres(cm: number): string {
  return `${cm} cm`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
