/** The order in which one person alone loads or strips a bar that could turn over, in words. */
import type { SheetExercise } from "../../api/types";
import { figure } from "../block/wish-words";

export type SheetOrder = NonNullable<SheetExercise["loading"]>;

/** Beyond this nothing that hangs there can turn the bar over. */
const NO_LIMIT = 99;

/** "left 25, right 25, right 1.25, left 1.25". */
export function movesInWords({ moves }: SheetOrder): string {
  return moves.map(({ side, kg }) => `${side} ${figure(kg)}`).join(", ");
}

/** The margin is what would turn the bar over, as a multiple of what hangs at that moment. */
export function marginInWords({ margin }: SheetOrder): string {
  if (margin >= NO_LIMIT) return "nothing here can turn the bar over";
  return `at the least ${figure(margin)} times what hangs would turn the bar over`;
}
