/** What a coach recorded, in words. */
import type { Clearance, ScreeningReason, ScreeningRecord } from "../answers";
import { figure } from "../block/wish-words";
import { calendarDate } from "../shell/when";

export const SITE_WORDS: Readonly<Record<string, string>> = {
  "left-upper-arm": "left upper arm",
  "right-upper-arm": "right upper arm",
  "left-thigh": "left thigh",
  "right-thigh": "right thigh",
  "left-calf": "left calf",
  "right-calf": "right calf",
};

export interface RecordWords {
  readonly title: string;
  readonly lines: readonly string[];
  /** What becomes of the work when it is withdrawn. */
  readonly closes: string;
}

/** `reasons` give the words of what a clearance covers. */
export function recordInWords(
  record: ScreeningRecord,
  reasons: readonly ScreeningReason[],
): RecordWords {
  switch (record.kind) {
    case "signature":
      return signature(record.body);
    case "clearance":
      return clearance(record.body, reasons);
    case "pressure":
      return pressure(record.body);
  }
}

type BodyOf<Kind extends ScreeningRecord["kind"]> = Extract<
  ScreeningRecord,
  { readonly kind: Kind }
>["body"];

function signature({ by, on, note, aim }: BodyOf<"signature">): RecordWords {
  const recovery = aim === "recovery" ? ["Aim: recovery, which is for the clinic."] : [];
  return {
    title: `Signed by ${by}, ${calendarDate(on)}`,
    lines: [...(note ? [`“${note}”`] : []), ...recovery],
    closes: "The screening then counts as unread, and occlusion work is closed until it is signed.",
  };
}

function clearance(body: BodyOf<"clearance">, reasons: readonly ScreeningReason[]): RecordWords {
  const { by, profession, licence, on, until, covers, alone, prescription } = body;
  const words = covers.map((key) => wordsOf(key, reasons)).join("; ");
  const own = prescription
    ? [`Prescribed: ${prescription.as_written} (${prescription.cuff}, ${prescription.pressure})`]
    : [];
  return {
    title: `Cleared by ${by}, ${profession.replace("-", " ")}, ${licence}`,
    lines: [
      `${calendarDate(on)} to ${calendarDate(until)}, ${alone ? "for training alone too" : "in company only"}`,
      `Covers: ${words}`,
      ...limitsInWords(body),
      ...own,
    ],
    closes: `What it opened closes again: ${words}.`,
  };
}

function pressure(body: BodyOf<"pressure">): RecordWords {
  const { mmhg, on, by, site, position, width_mm, material } = body;
  return {
    title: `${figure(mmhg)} mmHg, ${SITE_WORDS[site] ?? site}`,
    lines: [`${position}, cuff ${figure(width_mm)} mm ${material}, by ${by}, ${calendarDate(on)}`],
    closes: "A cuff on that limb goes back to an estimate, or is closed where there is none.",
  };
}

function limitsInWords({ limits = {} }: Pick<Clearance, "limits">): string[] {
  const parts = [
    limits.load_percent === undefined ? "" : `load ${figure(limits.load_percent)} %`,
    limits.wear_minutes === undefined ? "" : `worn ${figure(limits.wear_minutes)} min`,
    limits.days_a_week === undefined ? "" : `${limits.days_a_week} days a week`,
    limits.tightness === undefined ? "" : `tightness ${limits.tightness} of 10`,
    limits.pressure_percent === undefined ? "" : `pressure ${figure(limits.pressure_percent)} %`,
    limits.in_words ? `“${limits.in_words}”` : "",
  ].filter(Boolean);
  return parts.length > 0 ? [`At most: ${parts.join(", ")}`] : [];
}

function wordsOf(key: string, reasons: readonly ScreeningReason[]): string {
  return reasons.find((reason) => reason.key === key)?.words ?? key.replaceAll("-", " ");
}
