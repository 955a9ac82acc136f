import type { ComponentChildren } from "preact";

import { useDesk } from "../shell/desk-state";
import { dayAndClock } from "../shell/when";

interface DraftChoiceProps {
  readonly at: number;
  /** Whether the draft goes on, and not what the server has. */
  readonly onChoice: (own: boolean) => void;
  /** What became of the server's state meanwhile. */
  readonly children: ComponentChildren;
}

/** A draft from here and another state on the server: a person says which goes on. */
export function DraftChoice({ at, onChoice, children }: DraftChoiceProps) {
  const now = useDesk().now();
  return (
    <section class="failure" role="alert">
      <p>
        This browser holds a draft from {dayAndClock(at, now)} that the server does not have, and{" "}
        {children}. Only one can go on.
      </p>
      <button type="button" onClick={() => onChoice(true)}>
        Go on with the draft from here
      </button>{" "}
      <button type="button" onClick={() => onChoice(false)}>
        Take the server’s, drop the draft
      </button>
    </section>
  );
}
