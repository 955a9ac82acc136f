/** The kit's document as an athlete looks around the gym: piece by piece. */
import type { Kit } from "../../api/types";
import { mass, type Units } from "../words/mass";
import { count } from "../words/sets";

export interface Piece {
  /** The list of the document in which it stands. */
  readonly list: string;
  /** Its key, its mass in kg where it has none, or its words. */
  readonly name: string | number;
  readonly title: string;
  readonly facts: string;
  /** How many there are, where the kit counts them. */
  readonly count: number | null;
  readonly row: unknown;
}

export interface Shelf {
  readonly title: string;
  readonly pieces: readonly Piece[];
}

/** Shelves in the order in which a gym is looked over; empty ones are left out. */
export function shelvesOf(kit: Kit, units: Units): Shelf[] {
  const kg = (value: number) => mass(value, units);
  const shelves: Shelf[] = [
    {
      title: "Bars",
      pieces: (kit.bars ?? []).map((bar) => keyed("bars", bar, bar.name, kg(bar.mass_kg))),
    },
    {
      title: "Plates",
      pieces: (kit.plates ?? []).map((row) => counted("plates", row, row.label ?? kg(row.mass_kg))),
    },
    {
      title: "Dumbbells",
      pieces: [
        ...(kit.dumbbells ?? []).map((row) => counted("dumbbells", row, kg(row.mass_kg))),
        ...(kit.handles ?? []).map((row) => {
          const facts = `${count(row.count, "handle")}, ${kg(row.mass_kg)}`;
          return keyed("handles", row, row.name, facts);
        }),
      ],
    },
    {
      title: "Stacks",
      pieces: (kit.stacks ?? []).map((row) => {
        const most = row.pins_kg.at(-1) ?? 0;
        return keyed("stacks", row, row.name, `${count(row.pins_kg.length, "pin")} to ${kg(most)}`);
      }),
    },
    {
      title: "Bands",
      pieces: (kit.bands ?? []).map((row) => keyed("bands", row, row.label, bandFacts(row))),
    },
    {
      title: "Chains",
      pieces: (kit.chains ?? []).map((row) =>
        keyed("chains", row, row.label, `${count(row.count ?? 2, "piece")} of ${row.length_m} m`),
      ),
    },
    {
      title: "Racks and anchors",
      pieces: [
        ...(kit.supports ?? []).map((row) =>
          keyed("supports", row, row.name, row.safeties ? "with safeties" : "no safeties"),
        ),
        ...(kit.anchors ?? []).map((row) =>
          keyed("anchors", row, row.name, `${row.height_m} m above the floor`),
        ),
        ...(kit.landmines ?? []).map((row) => keyed("landmines", row, row.name, "")),
      ],
    },
    {
      title: "Wraps and cuffs",
      pieces: [
        ...(kit.wraps ?? []).map((row) => keyed("wraps", row, row.label, `${row.width_mm} mm`)),
        ...(kit.cuffs ?? []).map((row) => keyed("cuffs", row, row.label, `${row.width_mm} mm`)),
      ],
    },
    {
      title: "Other things",
      pieces: (kit.things ?? []).map((thing) => ({
        list: "things",
        name: thing,
        title: thing,
        facts: "",
        count: null,
        row: thing,
      })),
    },
  ];
  return shelves.filter(({ pieces }) => pieces.length > 0);
}

type Band = NonNullable<Kit["bands"]>[number];

function bandFacts({ width_mm, rest_length_m, readings = [], measured_on }: Band): string {
  const measured = readings.length > 0 ? `measured ${measured_on ?? ""}`.trim() : "not measured";
  return `${width_mm} mm wide, ${Math.round(rest_length_m * 100)} cm at rest, ${measured}`;
}

function keyed(list: string, row: { readonly key: string }, title: string, facts: string): Piece {
  return { list, name: row.key, title, facts, count: null, row };
}

interface Counted {
  readonly mass_kg?: number;
  readonly count: number;
}

function counted(list: string, row: Counted, title: string): Piece {
  const facts = row.count === 0 ? "none left" : count(row.count, "piece");
  return { list, name: row.mass_kg ?? 0, title, facts, count: row.count, row };
}
