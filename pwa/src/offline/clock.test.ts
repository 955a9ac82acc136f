// @vitest-environment node
import { describe, expect, test } from "vitest";

import { backoff, FIRST_MS, LONGEST_MS } from "./backoff";
import { stamp } from "./clock";
import { createIds, uuid7 } from "./uuid";

const NOON = Date.UTC(2026, 1, 3, 12, 0, 0, 250);

describe("an entry's time", () => {
  test("is local, with its offset", () => {
    expect(stamp(NOON, 60)).toBe("2026-02-03T13:00:00.250+01:00");
    expect(stamp(NOON, -210)).toBe("2026-02-03T08:30:00.250-03:30");
    expect(stamp(NOON, 0)).toBe("2026-02-03T12:00:00.250+00:00");
  });

  test("is the same moment whatever the offset, over midnight too", () => {
    for (const offset of [-720, -90, 0, 345, 840]) {
      expect(Date.parse(stamp(NOON, offset))).toBe(NOON);
    }
  });
});

describe("an entry's id", () => {
  // RFC 9562, appendix A.6: 0x017F22E279B0 is 22 February 2022 19:22:22 GMT.
  test("is a UUID of version 7, its time in front", () => {
    const bytes = Uint8Array.from({ length: 16 }, () => 0xff);
    expect(uuid7(0x017f22e279b0, () => bytes)).toBe("017f22e2-79b0-7fff-bfff-ffffffffffff");
  });

  test("sorts by its time", () => {
    const zeros = () => new Uint8Array(16);
    expect(uuid7(NOON, zeros) < uuid7(NOON + 1, zeros)).toBe(true);
  });
});

describe("an id after another", () => {
  test("is the greater one although the clock was set back an hour, or stood still", () => {
    const before = uuid7(NOON + 3_600_000);
    const ids = createIds(() => [uuid7(NOON), before]);
    const made = [ids(NOON), ids(NOON), ids(NOON + 7_200_000)];
    expect([before, ...made].toSorted()).toStrictEqual([before, ...made]);
  });
});

describe("the wait after a failed exchange", () => {
  test("begins at 2 s and doubles to 5 min", () => {
    const waits = [1, 2, 3, 9, 60].map((failures) => backoff(failures, () => 1));
    expect(waits).toStrictEqual([FIRST_MS, 4_000, 8_000, LONGEST_MS, LONGEST_MS]);
  });

  test("is between half and all of that, by chance", () => {
    expect(backoff(5, () => 0)).toBe(16_000);
    expect(backoff(5, () => 0.5)).toBe(24_000);
  });
});
