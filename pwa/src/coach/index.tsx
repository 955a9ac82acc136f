import "../parts/theme.css";
import "./look/desk.css";

import { render } from "preact";

import { App } from "./app";
import { arrive, createDesk, DeskProvider, mayLeave, type Desk } from "./shell/desk-state";
import { routeOf } from "./shell/route";

export function start(root: HTMLElement): void {
  const desk = createDesk(location.pathname, localStorage);
  takeSecret(desk);
  window.addEventListener("popstate", () => {
    if (mayLeave(desk)) arrive(desk, location.pathname);
    else history.pushState(null, "", desk.path.value);
  });
  window.addEventListener("beforeunload", (event) => {
    if (desk.unsaved.value !== null) event.preventDefault();
  });
  render(
    <DeskProvider value={desk}>
      <App />
    </DeskProvider>,
    root,
  );
}

/** Out of the address at once: it must not stand in a history, a bookmark or over a shoulder. */
function takeSecret(desk: Desk): void {
  if (routeOf(location.pathname).screen !== "join" || location.hash.length < 2) return;
  desk.offered.value = location.hash.slice(1);
  history.replaceState(null, "", location.pathname);
}
