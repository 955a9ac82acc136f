import { useRef } from "preact/hooks";

import { logOut } from "../desk";
import { draftCount } from "../block/drafts";
import { mayLeave, sayGoodbye, useDesk } from "./desk-state";
import { Link } from "./link";
import { ACCOUNT, BLOCKS, CALCULATORS, EXERCISES, ROOT, routeOf, type Route } from "./route";
import { useAct } from "./use-act";
import { useMenu } from "./use-menu";

/** The line at the top: where one can go, whether the server answers, who one is. */
export function Head() {
  const desk = useDesk();
  const head = useRef<HTMLElement>(null);
  const menu = useMenu(head, desk.path.value);
  return (
    <header class="head" ref={head}>
      <a class="skip" href="#content">
        Skip to the content
      </a>
      <span class="mark">Undercroft</span>
      <button
        type="button"
        class="menu-button"
        aria-expanded={menu.open}
        aria-controls="desk-menu"
        onClick={menu.toggle}
      >
        Menu
      </button>
      <div id="desk-menu" class={menu.open ? "menu open" : "menu"}>
        <Places />
        <span class="who">
          <Link to={ACCOUNT} current={routeOf(desk.path.value).screen === "account"}>
            {desk.coach.value?.name}
          </Link>
        </span>
        <Leave />
      </div>
      <Silence />
    </header>
  );
}

/** Where one can go, each with the screens that belong to it. */
const PLACES: readonly {
  readonly name: string;
  readonly to: string;
  readonly screens: readonly Route["screen"][];
}[] = [
  { name: "Squad", to: ROOT, screens: ["squad", "athlete"] },
  { name: "Blocks", to: BLOCKS, screens: ["blocks", "take-in", "writer", "send"] },
  { name: "Exercises", to: EXERCISES, screens: ["exercises", "exercise", "new-exercise"] },
  { name: "Calculators", to: CALCULATORS, screens: ["calculators", "calculator"] },
];

function Places() {
  const { screen } = routeOf(useDesk().path.value);
  return (
    <nav aria-label="Desk">
      {PLACES.map(({ name, to, screens }) => (
        <Link key={to} to={to} current={screens.includes(screen)}>
          {name}
        </Link>
      ))}
    </nav>
  );
}

function Silence() {
  const desk = useDesk();
  return (
    <span class="silence" role="status">
      {desk.answers.value ? "" : "The server does not answer. Edits to blocks are kept here."}
    </span>
  );
}

function Leave() {
  const desk = useDesk();
  const act = useAct();
  const leave = () => {
    const drafts = draftCount(desk.shelf, desk.coach.value?.id ?? "");
    const only = `${drafts === 1 ? "One draft is" : `${drafts} drafts are`} only in this browser`;
    if (drafts > 0 && !window.confirm(`${only}; kept for your next log-in. Log out?`)) return;
    if (mayLeave(desk)) act.run(logOut, () => sayGoodbye(desk));
  };
  return (
    <button type="button" class="plain leave" onClick={leave} disabled={act.busy}>
      {act.fault ? "Not logged out; try again" : "Log out"}
    </button>
  );
}
