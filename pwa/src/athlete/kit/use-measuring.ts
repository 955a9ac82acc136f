import type { Measuring } from "../../offline/database";
import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";
import { mostCm } from "./band-readings";

const FIRST_STRETCH_CM = 20;

interface Kept {
  readonly now: Measuring;
  readonly change: (part: Partial<Measuring>) => void;
  /** Told, or thrown away. */
  readonly end: () => void;
}

/** Kept with the phone after each reading, so that a reload or a flat battery costs none. */
export function useMeasuring(band: string, restCm: number): Kept {
  const { phone } = useApp();
  const { measuring = {} } = usePhoneState().settings;
  const { [band]: kept, ...others } = measuring;
  const now = kept ?? begun(restCm);
  return {
    now,
    change: (part) =>
      void phone.saveSettings({ measuring: { ...others, [band]: { ...now, ...part } } }),
    end: () => void phone.saveSettings({ measuring: others }),
  };
}

function begun(restCm: number): Measuring {
  return { restCm, stretched: false, readings: [], cm: firstCm(restCm), tenths: 0 };
}

export function firstCm(restCm: number): number {
  return Math.min(restCm + FIRST_STRETCH_CM, mostCm(restCm));
}
