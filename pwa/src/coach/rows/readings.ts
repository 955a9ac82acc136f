/** A hanging scale's readings of a band, as people write them: "1.30 m 9.5 kg; 1.60 m 14 kg". */

export interface Reading {
  readonly length_m: number;
  readonly force_n: number;
}

/** Standard gravity (CGPM 1901): scales are marked in kilograms, the document keeps newtons. */
const NEWTONS_PER_KG = 9.806_65;

const ONE = /^(\d+(?:\.\d+)?) ?m[ ,:]*(\d+(?:\.\d+)?) ?(kg|n)$/;

/** The readings of a text; null where a part of it is none. */
export function readReadings(text: string): Reading[] | null {
  const parts = text.split(/[;\n]/).map((part) =>
    part
      .trim()
      .toLowerCase()
      .replace(/,(?=\d)/g, "."),
  );
  const readings: Reading[] = [];
  for (const part of parts.filter(Boolean)) {
    const [, length, force, unit] = ONE.exec(part) ?? [];
    if (!length || !force) return null;
    const newtons = Number(force) * (unit === "kg" ? NEWTONS_PER_KG : 1);
    readings.push({ length_m: Number(length), force_n: Math.round(newtons * 10) / 10 });
  }
  return readings;
}

export function writeReadings(readings: readonly Reading[]): string {
  return readings
    .map(
      ({ length_m, force_n }) =>
        `${length_m} m ${Math.round((force_n / NEWTONS_PER_KG) * 100) / 100} kg`,
    )
    .join("; ");
}
