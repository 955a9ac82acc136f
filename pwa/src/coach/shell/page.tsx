import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

import { useDesk } from "./desk-state";

interface PageProps {
  readonly title: string;
  /** What stands above the title: the way back. */
  readonly above?: ComponentChildren;
  readonly aside?: ComponentChildren;
  readonly wide?: boolean;
  readonly children: ComponentChildren;
}

/** A screen with its title, which takes the focus when the screen was reached from another one. */
export function Page({ title, above, aside, wide = false, children }: PageProps) {
  const heading = useFocusOnArrival(title);
  return (
    <main class={wide ? "page page-wide" : "page"} id="content">
      {above && <div class="way-back">{above}</div>}
      <div class="page-head">
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {aside}
      </div>
      {children}
    </main>
  );
}

function useFocusOnArrival(title: string) {
  const desk = useDesk();
  const heading = useRef<HTMLHeadingElement>(null);
  const path = desk.path.value;
  useEffect(() => {
    document.title = `${title} · Undercroft`;
  }, [title]);
  useEffect(() => {
    const busy = heading.current?.closest("main")?.contains(document.activeElement);
    if (desk.wentTo.peek() === path && !busy) heading.current?.focus({ preventScroll: true });
  }, [path]);
  return heading;
}
