import { useApp } from "./app-context";
import { useInView } from "./device/view-time";
import { usePhoneState } from "./hooks";
import type { Place } from "./router";
import { SyncSign } from "./sync/sync-sign";
import { nameOfSign, syncInWords } from "./sync/sync-words";

interface Props {
  readonly title: string;
  readonly back?: Place;
  /** Stop is two taps from anywhere. */
  readonly stop?: boolean;
}

export function TopBar({ title, back, stop = true }: Props) {
  const { router } = useApp();
  const now = useInView();
  const sync = syncInWords(usePhoneState(), now);
  return (
    <header class="top-bar">
      {back && (
        <button type="button" class="top-button" aria-label="Back" onClick={() => router.go(back)}>
          <svg class="sign" viewBox="0 0 24 24" aria-hidden="true">
            <path d="M15 4l-8 8 8 8" />
          </svg>
        </button>
      )}
      <h1 class="top-title">{title}</h1>
      <button
        type="button"
        class="top-button top-sync"
        aria-label={nameOfSign(sync)}
        onClick={() => router.go("/sync")}
      >
        <SyncSign mood={sync.mood} />
        {sync.mood !== "sent" && <span>{sync.short}</span>}
      </button>
      {stop && (
        <button type="button" class="top-button top-stop" onClick={() => router.go("/stop")}>
          Stop
        </button>
      )}
    </header>
  );
}
