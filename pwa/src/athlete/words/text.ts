/** Text as the server takes it: trimmed, without NUL or halves of characters; empty where nothing is left. */
export function sendable(text: string): string {
  return Array.from(text)
    .filter((character) => character !== "\0" && !isLoneSurrogate(character))
    .join("")
    .trim();
}

function isLoneSurrogate(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  return code >= 0xd800 && code <= 0xdfff;
}
