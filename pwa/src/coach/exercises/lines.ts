/** Several words or sentences in one line of text. */

export function inLine(parts: readonly string[], between: "," | ";"): string {
  return parts.join(`${between} `);
}

export function outOfLine(text: string, between: "," | ";"): string[] {
  return text
    .split(between)
    .map((part) => part.trim())
    .filter(Boolean);
}
