export type Format = "json" | "csv";

/** What a text is, by the file's name where there is one, else by how it begins. */
export function formatOf(text: string, name: string): Format {
  const ending = name.toLowerCase().split(".").at(-1);
  if (ending === "csv" || ending === "json") return ending;
  return text.trimStart().startsWith("{") ? "json" : "csv";
}
