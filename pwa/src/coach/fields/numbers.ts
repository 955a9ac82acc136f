/** Numbers as people type them: a comma or a point, and nothing that merely looks like a number. */

type Typed =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "empty" }
  | { readonly kind: "wrong" };

export function readNumber(text: string): Typed {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  if (plain === "") return { kind: "empty" };
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return { kind: "wrong" };
  return { kind: "number", value: Number(plain) };
}

/** "5, 10, 15" or "5 10 15" as numbers; null where one of them is none. */
export function readNumbers(text: string): number[] | null {
  const parts = text.split(/[;\s]+|,\s+/).filter(Boolean);
  const read = parts.map((part) => readNumber(part.replace(/,$/, "")));
  const numbers = read.flatMap((each) => (each.kind === "number" ? [each.value] : []));
  return numbers.length === read.length ? numbers : null;
}

export function writeNumber(value: number | undefined): string {
  return value === undefined ? "" : String(Math.round(value * 1e6) / 1e6);
}
