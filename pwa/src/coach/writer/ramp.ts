/** Warm-up steps as people write them: "5 at 40 %; 3 at 60 %". */
import type { RampStep } from "../../api/types";

const STEP = /^(\d+)\s*(?:x|×|at|@)\s*(\d+(?:\.\d+)?)\s*%?$/;

export function readRamp(text: string): RampStep[] | null {
  const parts = text.split(/[;,\n]/).map((part) => part.trim().toLowerCase());
  const steps: RampStep[] = [];
  for (const part of parts.filter(Boolean)) {
    const [, reps, percent] = STEP.exec(part) ?? [];
    if (!reps || !percent) return null;
    steps.push({ reps: Number(reps), share: Math.round(Number(percent) * 1e4) / 1e6 });
  }
  return steps;
}

export function writeRamp(steps: readonly RampStep[]): string {
  return steps.map(({ reps, share }) => `${reps} at ${Math.round(share * 1e4) / 100} %`).join("; ");
}
