/** The desk remembers the session that is open here, for the next view of the block. */
import { effect } from "@preact/signals";
import { useEffect } from "preact/hooks";

import { sessionAt } from "../block/places";
import { useDesk } from "../shell/desk-state";
import type { Writer } from "./writer-state";

export function useSessionKept(writer: Writer): void {
  const desk = useDesk();
  useEffect(
    () =>
      effect(() => {
        const { week, session } = writer.place.value;
        const open =
          session === null ? undefined : sessionAt(writer.block.peek(), { week, session });
        desk.session.value = open?.key ?? null;
      }),
    [],
  );
}
