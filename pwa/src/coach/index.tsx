import "../parts/theme.css";
import "./look/desk.css";

import { render } from "preact";

import { App } from "./app";
import { arrive, createDesk, DeskProvider, mayLeave } from "./shell/desk-state";

export function start(root: HTMLElement): void {
  const desk = createDesk(location.pathname, localStorage);
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
