/** The order in which one person alone loads or strips a bar that could turn over, in words. */
import type { SheetExercise } from "../../api/types";
import { movesInWords, type Order } from "../../parts/order-words";
import { figure } from "../block/wish-words";

/** Beyond this nothing that hangs there can turn the bar over. */
const NO_LIMIT = 99;

/** "left 10, right 10, right collar, left collar". */
export function orderInWords(
  { moves }: Order,
  { collars_kg = 0, sides = 0 }: SheetExercise["implement"],
): string {
  const collarKg = sides > 0 ? collars_kg / sides : 0;
  const told = movesInWords(moves, { plate: figure, collarKg });
  return told.map(({ side, piece }) => `${side} ${piece}`).join(", ");
}

/** The margin is what would turn the bar over, as a multiple of what hangs at that moment. */
export function marginInWords({ margin }: Order): string {
  if (margin >= NO_LIMIT) return "nothing here can turn the bar over";
  return `at the least ${figure(margin)} times what hangs would turn the bar over`;
}
