import { describe, expect, test } from "vitest";

import { nameOfSign } from "./sync-words";

describe("the name of the sync sign", () => {
  test("says the number that the eye reads, even where a time of day has it too", () => {
    const long = "1 set and 1 more entry on this phone only, last sent today 15:23";
    expect(nameOfSign({ mood: "waiting", short: "2", long })).toBe(`Sync: 2, ${long}`);
  });

  test("says a number once where the line begins with it", () => {
    const long = "3 sets on this phone only, last sent today 15:23";
    expect(nameOfSign({ mood: "waiting", short: "3", long })).toBe(`Sync: ${long}`);
    const ten = "10 sets and 2 more entries on this phone only, never sent";
    expect(nameOfSign({ mood: "waiting", short: "1", long: ten })).toBe(`Sync: 1, ${ten}`);
  });
});
