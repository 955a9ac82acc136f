/** What the coach may do with the athlete on the screen; the server decides, this only shows it. */
import { createContext, type ComponentChildren } from "preact";
import { useContext } from "preact/hooks";

import type { AthletePage } from "../answers";

export type Right = AthletePage["right"];

const RANKS: readonly Right[] = ["read", "write", "own"];

const Shared = createContext<Right>("own");

export const RightProvider = Shared.Provider;

/** Whether the right at hand holds the one that is needed. */
export function useMay(needed: Right): boolean {
  return covers(useContext(Shared), needed);
}

export function covers(right: Right, needed: Right): boolean {
  return RANKS.indexOf(right) >= RANKS.indexOf(needed);
}

interface MayProps {
  readonly needs: Right;
  readonly children: ComponentChildren;
}

/** Its children, for whoever may. */
export function May({ needs, children }: MayProps) {
  return useMay(needs) ? <>{children}</> : null;
}

/** Fields that can be read, and changed by whoever may write. */
export function Writable({ children }: { readonly children: ComponentChildren }) {
  return (
    <fieldset class="bare" disabled={!useMay("write")}>
      {children}
    </fieldset>
  );
}
