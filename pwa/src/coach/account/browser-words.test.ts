import { expect, it } from "vitest";

import { browserInWords } from "./browser-words";

it("names browser and system as people do", () => {
  const chrome = "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 Chrome/120.0 Safari/537.36";
  expect(browserInWords(chrome)).toBe("Chrome on Linux");
  const phone = "Mozilla/5.0 (iPhone; CPU iPhone OS 17_0 like Mac OS X) Version/17.0 Safari/604.1";
  expect(browserInWords(phone)).toBe("Safari on an iPhone");
});

it("leaves a stranger's own words", () => {
  expect(browserInWords("script/1.0")).toBe("script/1.0");
  expect(browserInWords("")).toBe("Unknown");
});
