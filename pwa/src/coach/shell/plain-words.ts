/** What went wrong, for a person. */
import { NoAnswer, Refused } from "../../api/client";

export function inPlainWords(fault: unknown): string {
  if (fault instanceof NoAnswer) return "The server does not answer.";
  if (!(fault instanceof Refused)) return `The desk itself failed: ${String(fault)}.`;
  const { faults } = fault;
  if (faults.length > 0) {
    return faults.length === 1
      ? "One thing has to be put right:"
      : `${faults.length} things have to be put right:`;
  }
  const { detail, title } = fault.problem;
  const told = fault.retryAfterS === null || /\d+ s\b/.test(detail);
  const wait = told ? "" : ` Try again in ${fault.retryAfterS} s.`;
  return `${sentence(detail || title)}${wait}`;
}

function sentence(text: string): string {
  const begun = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(begun) ? begun : `${begun}.`;
}
