/** What this browser gives for keeping pictures. */
import type { PictureParts } from "../../offline/pictures";

export function pictureParts(): PictureParts {
  return { caches, fetch: (address, init) => fetch(address, init), saving, room };
}

function saving(): boolean {
  const { connection } = navigator as Navigator & { connection?: { saveData?: boolean } };
  return connection?.saveData === true;
}

async function room(): Promise<number> {
  const told = await navigator.storage?.estimate?.();
  return told?.quota === undefined ? Infinity : told.quota - (told.usage ?? 0);
}
