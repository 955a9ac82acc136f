/** What a browser calls itself, in words; the first that fits counts. */
const BROWSERS: readonly (readonly [RegExp, string])[] = [
  [/Firefox\//, "Firefox"],
  [/Edg\//, "Edge"],
  [/Chrom(e|ium)\//, "Chrome"],
  [/Safari\//, "Safari"],
];
const SYSTEMS: readonly (readonly [RegExp, string])[] = [
  [/iPhone/, "an iPhone"],
  [/iPad/, "an iPad"],
  [/Android/, "Android"],
  [/Windows/, "Windows"],
  [/Mac OS X/, "a Mac"],
  [/Linux/, "Linux"],
];

/** "Firefox on Windows"; a stranger by the first of its own words. */
export function browserInWords(agent: string): string {
  const browser = BROWSERS.find(([sign]) => sign.test(agent))?.[1];
  const system = SYSTEMS.find(([sign]) => sign.test(agent))?.[1];
  if (!browser) return agent.slice(0, 40) || "Unknown";
  return system ? `${browser} on ${system}` : browser;
}
