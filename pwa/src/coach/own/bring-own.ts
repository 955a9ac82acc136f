/** Bringing an athlete's own block to the server, which keeps what in it is otherwise. */
import type { OwnLine } from "../answers";
import { saveOwn } from "../desk";
import type { Bring } from "../writer/bring";

/** `onChanges` is told what is otherwise now. With faults the server keeps nothing of it. */
export function bringOwn(
  athleteId: string,
  onChanges: (changes: readonly OwnLine[]) => void,
): Bring {
  return async (id, document, base) => {
    const { as_of, changed_at, faults, changes } = await saveOwn(
      id,
      athleteId,
      document,
      base ?? "",
    );
    onChanges(changes);
    return { id, base: as_of, at: changed_at, faults, taken: faults.length === 0 };
  };
}
