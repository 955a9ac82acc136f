import { useMemo } from "preact/hooks";

import { draft, type KitChange } from "../../offline/entry";
import { useApp } from "../app-context";
import { usePhoneState } from "../hooks";

/** Proposes a change of the kit; `replaces` is the entry that it corrects. */
export function usePropose(): (item: string, change: KitChange, replaces?: string) => void {
  const { phone, clock } = useApp();
  const { entries } = usePhoneState();
  const id = useMemo(() => phone.newId(), [phone, entries.length]);
  return (item, change, replaces) => {
    const body = { item, change };
    void phone.record(draft(id, clock.now(), "kit.changed", body, { replaces: replaces ?? null }));
  };
}
