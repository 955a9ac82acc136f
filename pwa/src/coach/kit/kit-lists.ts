/** The kit's lists and their columns: lengths are shown in millimetres or centimetres. */
import type { Kit } from "../../api/types";
import type { Column } from "../rows/columns";

export type RowOf<L extends keyof Kit> =
  Exclude<NonNullable<Kit[L]>, string> extends readonly (infer R)[]
    ? Exclude<R, string> & object
    : never;

const BAR_KINDS = {
  straight: "straight",
  hex: "hex",
  oscillating: "oscillating",
  curl: "curl",
} as const;

const name = { kind: "text", field: "name", label: "Name", width: "w12" } as const;
const label = { kind: "text", field: "label", label: "Its own label", width: "w12" } as const;
const mass = { kind: "number", field: "mass_kg", label: "Mass", unit: "kg", step: 0.5 } as const;
const count = {
  kind: "number",
  field: "count",
  label: "Pieces",
  whole: true,
  width: "w3",
} as const;
const pair = { ...count, usual: 2 } as const;
const rated = {
  kind: "number",
  field: "rated_load_kg",
  label: "Bears",
  unit: "kg",
  step: 10,
} as const;
const width = { kind: "number", field: "width_mm", label: "Width", unit: "mm" } as const;
const sleeve = { field: "sleeve_length_m", label: "Sleeve", unit: "mm", scale: 1000 } as const;
const collar = { field: "collar_mass_kg", label: "One collar", unit: "kg", usual: 0 } as const;

export const BARS: readonly Column<RowOf<"bars">>[] = [
  name,
  { kind: "choice", field: "kind", label: "Kind", choices: BAR_KINDS, usual: "straight" },
  mass,
  { kind: "number", ...sleeve, usual: 415 },
  { kind: "number", ...collar, step: 0.25 },
  rated,
];

export const PLATES: readonly Column<RowOf<"plates">>[] = [
  { ...mass, step: 1.25 },
  { ...count, label: "Pieces, both sides" },
  { kind: "number", field: "thickness_m", label: "Thickness", unit: "mm", scale: 1000 },
  { kind: "text", field: "label", label: "Written on it", width: "w8" },
];

export const DUMBBELLS: readonly Column<RowOf<"dumbbells">>[] = [
  { ...mass, step: 2.5 },
  { ...count, label: "Single pieces" },
];

export const HANDLES: readonly Column<RowOf<"handles">>[] = [
  name,
  mass,
  count,
  { kind: "number", ...sleeve, usual: 120 },
  { kind: "number", ...collar, step: 0.25 },
  rated,
];

export const STACKS: readonly Column<RowOf<"stacks">>[] = [
  name,
  { kind: "exercises", field: "only_for", label: "A machine only for", width: "w12" },
  {
    kind: "numbers",
    field: "pins_kg",
    label: "Pins, lightest first",
    unit: "kg",
    width: "w12",
    hint: "5, 10, 15, 20",
  },
  {
    kind: "numbers",
    field: "add_ons_kg",
    label: "Loose add-ons",
    unit: "kg",
    width: "w3",
    hint: "2.5",
  },
  {
    kind: "number",
    field: "travel_ratio",
    label: "Hand travel ÷ stack travel",
    width: "w8",
    usual: 1,
  },
  { kind: "number", field: "sheaves", label: "Pulleys", whole: true, width: "w3", usual: 2 },
  {
    kind: "number",
    field: "sheave_efficiency",
    label: "Efficiency of each",
    unit: "%",
    scale: 100,
    width: "w3",
    usual: 98,
  },
  { kind: "truth", field: "efficiency_measured", label: "Measured", usual: false },
];

export const BANDS: readonly Column<RowOf<"bands">>[] = [
  label,
  width,
  { kind: "number", field: "thickness_mm", label: "Thickness", unit: "mm", step: 0.5 },
  { kind: "number", field: "rest_length_m", label: "Lying flat", unit: "cm", scale: 100 },
  {
    kind: "readings",
    field: "readings",
    label: "Hanging scale",
    width: "w20",
    hint: "1.30 m 9.5 kg; 1.60 m 14 kg",
  },
  { kind: "date", field: "measured_on", label: "Measured on" },
];

export const CHAINS: readonly Column<RowOf<"chains">>[] = [
  label,
  { kind: "number", field: "length_m", label: "Length", unit: "m", step: 0.1 },
  { kind: "number", field: "mass_per_m_kg", label: "Mass of a metre", unit: "kg", step: 0.1 },
  { kind: "number", field: "diameter_mm", label: "or link diameter", unit: "mm" },
  pair,
];

export const ANCHORS: readonly Column<RowOf<"anchors">>[] = [
  name,
  { kind: "number", field: "height_m", label: "Above the floor", unit: "cm", scale: 100 },
  {
    kind: "number",
    field: "offset_m",
    label: "Off the bar’s path",
    unit: "cm",
    scale: 100,
    usual: 0,
  },
  { kind: "number", field: "sides", label: "Sides", whole: true, width: "w2", usual: 2 },
];

export const SUPPORTS: readonly Column<RowOf<"supports">>[] = [
  name,
  { kind: "number", field: "spacing_m", label: "Between the uprights", unit: "cm", scale: 100 },
  { kind: "truth", field: "safeties", label: "Safeties", usual: false },
  rated,
];

export const LANDMINES: readonly Column<RowOf<"landmines">>[] = [
  name,
  {
    kind: "number",
    field: "pivot_height_m",
    label: "Pivot above the floor",
    unit: "cm",
    scale: 100,
    usual: 5,
  },
];

export const WRAPS: readonly Column<RowOf<"wraps">>[] = [label, width, pair];

export const CUFFS: readonly Column<RowOf<"cuffs">>[] = [
  label,
  width,
  { kind: "text", field: "material", label: "Material", width: "w8" },
  pair,
];
