import type { ComponentChildren } from "preact";

interface OwnMarkProps {
  readonly children: ComponentChildren;
  /** What goes back, for those who do not see where the button stands. */
  readonly of: string;
  readonly back?: (() => void) | undefined;
}

/** Marks what is one athlete's own, by word and rule, with the way back to the block's. */
export function OwnMark({ children, of, back }: OwnMarkProps) {
  return (
    <p class="own-mark">
      <b>own</b> <span>{children}</span>{" "}
      {back && (
        <button type="button" class="plain" onClick={back}>
          Back to the block’s<span class="sr-only">: {of}</span>
        </button>
      )}
    </p>
  );
}
