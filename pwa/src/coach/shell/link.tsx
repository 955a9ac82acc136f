import type { ComponentChildren } from "preact";

import { go, useDesk } from "./desk-state";

interface LinkProps {
  readonly to: string;
  readonly children: ComponentChildren;
  readonly class?: string;
  readonly current?: boolean;
}

/** A link within the desk; with a modifier key it is an ordinary one. */
export function Link({ to, children, current = false, class: look }: LinkProps) {
  const desk = useDesk();
  const follow = (event: MouseEvent) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
    event.preventDefault();
    go(desk, to);
  };
  return (
    <a href={to} class={look} aria-current={current ? "page" : undefined} onClick={follow}>
      {children}
    </a>
  );
}
