/** Addresses of the desk's screens. */

export type Route =
  | { readonly screen: "squad" }
  | { readonly screen: "athlete"; readonly id: string; readonly part: AthletePart }
  | { readonly screen: "sheets"; readonly id: string }
  | { readonly screen: "blocks" }
  | { readonly screen: "take-in" }
  | { readonly screen: "writer" | "send"; readonly id: string }
  | { readonly screen: "own"; readonly id: string; readonly athlete: string }
  | { readonly screen: "exercises" | "new-exercise" }
  | { readonly screen: "exercise"; readonly key: string }
  | { readonly screen: "calculators" }
  | { readonly screen: "calculator"; readonly key: string }
  | { readonly screen: "account" | "join" }
  | { readonly screen: "nowhere" };

export const ATHLETE_PARTS = [
  "results",
  "next",
  "monitoring",
  "person",
  "kit",
  "screening",
  "phones",
  "held",
  "sharing",
] as const;
export type AthletePart = (typeof ATHLETE_PARTS)[number];

export const ROOT = "/desk";

export function routeOf(path: string): Route {
  const [desk, area, id, part, whose, ...more] = path.split("/").filter(Boolean).map(decoded);
  if (desk !== "desk" || more.length > 0) return { screen: "nowhere" };
  if (whose !== undefined) return ownRoute(area, id, part, whose);
  if (area === undefined) return { screen: "squad" };
  if (area === "athletes" && id) return athleteRoute(id, part);
  if (area === "blocks") return blockRoute(id, part);
  if (area === "exercises" && part === undefined) return exerciseRoute(id);
  if (area === "calculators" && part === undefined) return calculatorRoute(id);
  if ((area === "account" || area === "join") && id === undefined) return { screen: area };
  return { screen: "nowhere" };
}

export function athletePath(id: string, part: AthletePart = "results"): string {
  const page = `${ROOT}/athletes/${encodeURIComponent(id)}`;
  return part === "results" ? page : `${page}/${part}`;
}

/** The athlete's load sheets for paper. */
export function sheetsPath(id: string): string {
  return `${ROOT}/athletes/${encodeURIComponent(id)}/sheets`;
}

export function blockPath(id: string, part?: "send"): string {
  const page = `${ROOT}/blocks/${encodeURIComponent(id)}`;
  return part ? `${page}/${part}` : page;
}

/** The block as one athlete does it. */
export function ownPath(id: string, athlete: string): string {
  return `${blockPath(id)}/own/${encodeURIComponent(athlete)}`;
}

export function exercisePath(key: string): string {
  return `${EXERCISES}/${encodeURIComponent(key)}`;
}

export function calculatorPath(key: string): string {
  return `${CALCULATORS}/${encodeURIComponent(key)}`;
}

export const ACCOUNT = `${ROOT}/account`;
export const EXERCISES = `${ROOT}/exercises`;
export const NEW_EXERCISE = `${EXERCISES}/new`;
export const CALCULATORS = `${ROOT}/calculators`;
export const BLOCKS = `${ROOT}/blocks`;
export const TAKE_IN = `${BLOCKS}/take-in`;

function athleteRoute(id: string, part: string | undefined): Route {
  if (part === "sheets") return { screen: "sheets", id };
  const known = ATHLETE_PARTS.find((each) => each === (part ?? "results"));
  return known ? { screen: "athlete", id, part: known } : { screen: "nowhere" };
}

function blockRoute(id: string | undefined, part: string | undefined): Route {
  if (id === undefined) return { screen: "blocks" };
  if (id === "take-in" && part === undefined) return { screen: "take-in" };
  if (part === undefined) return { screen: "writer", id };
  return part === "send" ? { screen: "send", id } : { screen: "nowhere" };
}

function ownRoute(
  area: string | undefined,
  id: string | undefined,
  part: string | undefined,
  athlete: string,
): Route {
  const known = area === "blocks" && part === "own" && id !== undefined;
  return known ? { screen: "own", id, athlete } : { screen: "nowhere" };
}

function exerciseRoute(key: string | undefined): Route {
  if (key === "new") return { screen: "new-exercise" };
  return key === undefined ? { screen: "exercises" } : { screen: "exercise", key };
}

function calculatorRoute(key: string | undefined): Route {
  return key === undefined ? { screen: "calculators" } : { screen: "calculator", key };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
