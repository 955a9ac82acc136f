/** What cannot wait, and because of what. */
import type { ScreeningPage } from "../answers";

export interface Urgent {
  readonly act: string;
  readonly because: readonly string[];
}

/** Each urgent line once, with every reason that asks for it. */
export function urgentIn({ lock, reasons }: Pick<ScreeningPage, "lock" | "reasons">): Urgent[] {
  return lock.do_now.map((act) => ({
    act,
    because: reasons
      .filter((reason) => reason.urgent === act && !reason.covered)
      .map((reason) => reason.words),
  }));
}
