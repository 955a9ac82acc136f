import type { ComponentType } from "preact";
import { useErrorBoundary } from "preact/hooks";

import { useApp } from "./app-context";
import { usePhoneState } from "./hooks";
import { later, Wraps } from "./later";
import type { Place } from "./router";
import { SetScreen } from "./session/set-screen";
import { StopScreen } from "./stop/stop-screen";
import { TodayScreen } from "./today/today-screen";

const PairScreen = later("PairScreen");

const SCREENS: Readonly<Record<Place, ComponentType>> = {
  "/": TodayScreen,
  "/set": SetScreen,
  "/sets": later("SetsScreen"),
  "/swap": later("SwapScreen"),
  "/finish": later("FinishScreen"),
  "/stop": StopScreen,
  "/back": later("BackScreen"),
  "/sync": later("SyncScreen"),
  "/tell": later("TellScreen"),
  "/kit": later("KitScreen"),
  "/pair": PairScreen,
  "/screening": later("ScreeningScreen"),
  "/after": later("AfterScreen"),
};

export function AppScreens() {
  const { router } = useApp();
  const { loaded, identity, fault } = usePhoneState();
  const [broken] = useErrorBoundary();
  if (broken) return <Broken />;
  if (!loaded) return fault ? <StorageTrouble /> : null;
  const Screen =
    identity || router.place.value === "/stop" ? SCREENS[router.place.value] : PairScreen;
  return (
    <>
      <UnsavedNotice />
      <Wraps part="WrapLayer" />
      <Screen key={router.place.value} />
      <Flash />
    </>
  );
}

/** A fault of the app itself. What was recorded is in the storage, whatever the screen does. */
function Broken() {
  return (
    <div class="screen">
      <main class="page">
        <h1>This screen failed</h1>
        <p role="alert">What you recorded is safe on this phone. Load the app again.</p>
        <button type="button" class="button main" onClick={() => location.reload()}>
          Load again
        </button>
      </main>
    </div>
  );
}

/** The phone's memory does not answer at the start: nothing can be shown, and nothing is lost. */
function StorageTrouble() {
  const { phone } = useApp();
  const { fault } = usePhoneState();
  return (
    <div class="screen">
      <main class="page">
        <h1>This phone's storage does not answer</h1>
        <p role="alert">
          {fault?.outdated
            ? "A newer version of the app has been here. Load this page again."
            : "What you recorded is still there. Close other tabs of the app, then try again."}
        </p>
        <button
          type="button"
          class="button main"
          onClick={() => (fault?.outdated ? location.reload() : void phone.load())}
        >
          {fault?.outdated ? "Load again" : "Try again"}
        </button>
      </main>
    </div>
  );
}

/** A tap that could not be stored is said at once, on every screen. */
function UnsavedNotice() {
  const { phone } = useApp();
  const { unsaved, fault } = usePhoneState();
  const failed = unsaved.filter((each) => each.failed).length;
  if (failed === 0) return null;
  return (
    <div class="unsaved" role="alert">
      <p>
        <strong>Not saved yet.</strong>{" "}
        {fault?.full ? "This phone's storage is full." : "This phone's storage does not answer."}{" "}
        Keep this page open.
      </p>
      <button type="button" class="button" onClick={() => void phone.retry()}>
        Try again
      </button>
    </div>
  );
}

function Flash() {
  const { flash } = useApp();
  if (flash.value === null) return null;
  return (
    <div class="flash" role="status">
      <span>{flash.value}</span>
    </div>
  );
}
