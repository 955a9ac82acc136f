/** Answers in words. */
import type { Answer, Question } from "../../api/screening";
import { noonOf } from "../words/times";

const REPLIES: Readonly<Record<string, string>> = {
  yes: "Yes",
  no: "No",
  "not-sure": "Not sure",
  "not-said": "I would rather not say",
};

export function replyInWords(key: string): string {
  return REPLIES[key] ?? key.charAt(0).toUpperCase() + key.slice(1);
}

export function answerInWords({ kind, unit }: Question, answer: Answer | undefined): string {
  if (answer === undefined) return "open";
  if (kind === "number") return numberInWords(Number(answer), unit ?? "");
  if (kind === "date") return dayInWords(String(answer));
  return replyInWords(String(answer));
}

export function numberInWords(value: number, unit: string): string {
  return `${unit === "m" ? value.toFixed(2) : value} ${unit}`;
}

/** "1 May 1996" */
export function dayInWords(day: string): string {
  const at = new Date(noonOf(day));
  return at.toLocaleDateString([], { day: "numeric", month: "long", year: "numeric" });
}
