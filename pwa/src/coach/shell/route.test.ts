import { describe, expect, it } from "vitest";

import {
  ATHLETE_PARTS,
  athletePath,
  ACCOUNT,
  blockPath,
  BLOCKS,
  calculatorPath,
  CALCULATORS,
  exercisePath,
  EXERCISES,
  NEW_EXERCISE,
  ownPath,
  ROOT,
  routeOf,
  TAKE_IN,
} from "./route";

describe("an address of the desk", () => {
  it.each([
    [ROOT, { screen: "squad" }],
    [`${ROOT}/`, { screen: "squad" }],
    [BLOCKS, { screen: "blocks" }],
    [TAKE_IN, { screen: "take-in" }],
    [ACCOUNT, { screen: "account" }],
    [blockPath("b 1"), { screen: "writer", id: "b 1" }],
    [blockPath("b1", "send"), { screen: "send", id: "b1" }],
    [ownPath("b 1", "a/1"), { screen: "own", id: "b 1", athlete: "a/1" }],
    [`${ownPath("b", "a")}/again`, { screen: "nowhere" }],
    [EXERCISES, { screen: "exercises" }],
    [NEW_EXERCISE, { screen: "new-exercise" }],
    [exercisePath("back-squat"), { screen: "exercise", key: "back-squat" }],
    [`${EXERCISES}/back-squat/again`, { screen: "nowhere" }],
    [CALCULATORS, { screen: "calculators" }],
    [calculatorPath("band-force"), { screen: "calculator", key: "band-force" }],
    [`${CALCULATORS}/plates/again`, { screen: "nowhere" }],
    [`${ROOT}/athletes`, { screen: "nowhere" }],
    [`${ROOT}/athletes/a/shoes`, { screen: "nowhere" }],
    [`${ROOT}/blocks/b/send/again`, { screen: "nowhere" }],
    [`${ROOT}/blocks/%`, { screen: "writer", id: "%" }],
  ])("%s leads to its screen", (path, route) => {
    expect(routeOf(path)).toEqual(route);
  });

  it("of each part of an athlete's page leads back to that part", () => {
    for (const part of ATHLETE_PARTS) {
      expect(routeOf(athletePath("a/1", part))).toEqual({ screen: "athlete", id: "a/1", part });
    }
  });
});
