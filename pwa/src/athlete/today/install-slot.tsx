import { useApp } from "../app-context";
import { isInstalled } from "../device/install";
import { usePhoneState, useUnderWay } from "../hooks";
import { useMore } from "../later";

/** Offered calmly: not before something was recorded, not in a session, and once. */
export function InstallSlot() {
  const { phone } = useApp();
  const { entries, settings } = usePhoneState();
  const recorded = entries.some(({ entry }) => entry.kind === "set.done");
  const free = useUnderWay() === null;
  const wanted = recorded && free && !settings.installOffered && !isInstalled(window);
  const { more } = useMore(wanted);
  if (!wanted || !more) return null;
  return <more.InstallPart onLater={() => void phone.saveSettings({ installOffered: true })} />;
}
