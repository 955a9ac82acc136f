import "../parts/theme.css";
import "./look/index.css";
import { computed, effect, signal } from "@preact/signals";
import { render } from "preact";

import { deviceClock } from "../offline/clock";
import { sessionsBegun, underWay } from "../offline/ledger-view";
import { AppScreens } from "./app";
import { type App, AppContext, type Focus } from "./app-context";
import { createAlarm } from "./device/alarm";
import { watchForInstall } from "./device/install";
import { watchForUpdate } from "./device/update";
import { createDevicePhone } from "./device/wiring";
import { loadMore } from "./later";
import { secretFromAddress } from "./pair/secret";
import { createRouter } from "./router";

export function start(root: HTMLElement): void {
  const secret = signal(secretFromAddress(window));
  const phone = createDevicePhone();
  const state = signal(phone.state());
  phone.subscribe(() => {
    state.value = phone.state();
  });
  const app: App = {
    phone,
    state,
    sessions: computed(() => sessionsBegun(state.value)),
    clock: deviceClock,
    router: createRouter(window),
    alarm: createAlarm(() => phone.state().settings.sound ?? true),
    update: watchForUpdate(),
    install: watchForInstall(window),
    focus: signal<Focus>({ exercise: null, correcting: null }),
    secret,
    flash: signal<string | null>(null),
  };
  document.body.classList.add("phone");
  render(
    <AppContext.Provider value={app}>
      <AppScreens />
    </AppContext.Provider>,
    root,
  );
  void begin(app);
}

async function begin(app: App): Promise<void> {
  const { phone, sessions, router } = app;
  nameThePage(router);
  await phone.load();
  // At the right place at once: in the middle of a session that is its set.
  if (router.place.value === "/" && underWay(sessions.value)) router.replace("/set");
  phone.poke("start");
  phone.watch(document.visibilityState === "visible");
  void loadMore().then(
    ({ keepPictures }) => keepPictures(app),
    () => undefined,
  );
}

const NAMES: Readonly<Record<string, string>> = {
  "/set": "Set",
  "/sets": "All sets",
  "/swap": "Swap",
  "/finish": "Finish",
  "/stop": "Stop",
  "/back": "Look back",
  "/sync": "This phone",
  "/tell": "Tell your coach",
  "/kit": "Kit",
  "/pair": "Pair",
  "/screening": "Screening",
  "/after": "After the work",
};

function nameThePage({ place }: App["router"]): void {
  effect(() => {
    document.title = `${NAMES[place.value] ?? "Today"} · Undercroft`;
  });
}
