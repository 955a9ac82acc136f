/** What was done in a session, exercise by exercise, for the look back. */
import type { LoadSheet, SheetExercise } from "../../api/types";
import type { SessionRecord, SetRecord } from "../../offline/fold";
import { revisionOf } from "../../offline/ledger-view";
import { asDone, exercisesOf } from "../../offline/plan";

export interface Part {
  readonly name: string;
  readonly exercise: SheetExercise | undefined;
  readonly sets: readonly SetRecord[];
}

/** Another doing of the block may have a session of the same key: that of the record's revision goes first. */
export function sheetOf(
  { session, revision }: SessionRecord,
  sheets: readonly LoadSheet[],
): LoadSheet | undefined {
  const same = sheets.filter((sheet) => sheet.session === session);
  return same.find((sheet) => revisionOf(sheet) === revision) ?? same[0];
}

/**
 * In the order of the sheet, each set under what it was done as; what the sheet does not know stands at the
 * end.
 */
export function partsOf(sheet: LoadSheet | undefined, record: SessionRecord): Part[] {
  const left = new Map(record.sets);
  const parts: Part[] = [];
  for (const line of sheet ? exercisesOf(sheet, { ...record, swaps: NONE }) : []) {
    const ways = new Map<string, { exercise: SheetExercise; sets: SetRecord[] }>();
    for (const { key } of line.sets) {
      const set = left.get(key);
      if (!sheet || !set) continue;
      left.delete(key);
      const exercise = asDone(sheet, record, line.key, set.first) ?? line;
      const way = ways.get(exercise.name) ?? { exercise, sets: [] };
      ways.set(exercise.name, { exercise, sets: [...way.sets, set] });
    }
    for (const [name, way] of ways) parts.push({ name, ...way });
  }
  if (left.size === 0) return parts;
  return [...parts, { name: "Other sets", exercise: undefined, sets: [...left.values()] }];
}

const NONE: ReadonlyMap<string, string> = new Map();
