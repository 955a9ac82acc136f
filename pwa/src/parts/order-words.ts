/** The order of loading or stripping a light bar, move by move. */
import type { SheetExercise } from "../api/types";

export type Order = NonNullable<SheetExercise["loading"]>;
type Move = Order["moves"][number];

interface MoveWords {
  readonly side: Move["side"];
  /** "2.5", or "collar". */
  readonly piece: string;
}

interface Naming {
  readonly plate: (kg: number) => string;
  /** Mass of the collar of one side; 0 where none is counted. */
  readonly collarKg: number;
}

export function movesInWords(moves: readonly Move[], { plate, collarKg }: Naming): MoveWords[] {
  return moves.map(({ side, kg }, index) => ({
    side,
    piece: isCollar(moves, index, collarKg) ? "collar" : plate(kg),
  }));
}

/** The collar is the outermost: it goes on after its side's plates and comes off before them. */
function isCollar(moves: readonly Move[], index: number, collarKg: number): boolean {
  const move = moves[index];
  if (!move || collarKg <= 0 || Math.abs(move.kg - collarKg) > SAME_KG) return false;
  const others = move.on ? moves.slice(index + 1) : moves.slice(0, index);
  return !others.some(({ side }) => side === move.side);
}

const SAME_KG = 1e-6;
