import type { ComponentChildren } from "preact";

import { useArmed } from "../../device/armed";

interface Props {
  readonly onPress: () => void;
  readonly children: ComponentChildren;
}

/** The main button of a step; a double tap on the one before does not press it. */
export function Press({ onPress, children }: Props) {
  const armed = useArmed();
  return (
    <button type="button" class="button main record" disabled={!armed} onClick={onPress}>
      {children}
    </button>
  );
}
