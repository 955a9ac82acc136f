/** A coach's own exercise as it is written, and as it goes to the server. */
import type { CatalogueEntry, OwnExercise } from "../answers";

export const BLANK: OwnExercise = {
  name: "",
  implement: "dumbbells",
  prime: [],
  helpers: [],
  needs: [],
  start_share: null,
  range_share: null,
  one_sided: false,
  needs_safeties: false,
  hands_sink: false,
  overhead: false,
  cues: [],
  alternatives: [],
};

/** What can be written of a listed exercise. */
export function written(one: CatalogueEntry): OwnExercise {
  const fields = Object.keys(BLANK) as (keyof OwnExercise)[];
  return Object.fromEntries(fields.map((field) => [field, one[field]])) as unknown as OwnExercise;
}

/** Without what is not known: the server takes no empty field. */
export function sent(one: OwnExercise): Record<string, unknown> {
  return Object.fromEntries(Object.entries(one).filter(([, value]) => value !== null));
}
