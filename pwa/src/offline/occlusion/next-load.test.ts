import { describe, expect, test } from "vitest";

import { fixture } from "../../../tests/fakes/occlusion";
import { lighter, nextLoad, type NextTable } from "./next-load";

interface Case {
  readonly name: string;
  readonly table: NextTable;
  readonly reps: readonly number[];
  readonly stopped: boolean;
  readonly step: string;
  readonly kg: number;
}

const { cases } = fixture("occlusion/next-load.json") as { readonly cases: Case[] };

describe("next time's load", () => {
  test.each(cases)("$name: as the server has it", ({ table, reps, stopped, step, kg }) => {
    expect(nextLoad(table, reps, stopped)).toStrictEqual({ step, kg });
  });

  test("of two limbs follows the one that asks for less", () => {
    const [up, hold] = [
      { step: "up", kg: 12 },
      { step: "hold", kg: 10 },
    ] as const;
    expect(lighter(up, hold)).toBe(hold);
    expect(lighter(hold, up)).toBe(hold);
  });
});
