/** Which faults stand beside which line. */
import type { Fault } from "../../api/client";

/** Faults of the thing at `path`, of its fields and of all that is inside; "" is the document. */
export function within(faults: readonly Fault[], path: string): Fault[] {
  if (path === "") return [...faults];
  return faults.filter((fault) => fault.path === path || fault.path.startsWith(`${path}.`));
}

/** Faults of the thing at `path` that do not speak of one item of the `list` inside it. */
export function own(faults: readonly Fault[], path: string, list: string): Fault[] {
  const inside = path === "" ? `${list}.` : `${path}.${list}.`;
  return within(faults, path).filter((fault) => !fault.path.startsWith(inside));
}
