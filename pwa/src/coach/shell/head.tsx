import { logOut } from "../desk";
import { draftsOf } from "../block/drafts";
import { mayLeave, sayGoodbye, useDesk } from "./desk-state";
import { Link } from "./link";
import { BLOCKS, CALCULATORS, ROOT, routeOf } from "./route";
import { useAct } from "./use-act";

/** The line at the top: where one can go, whether the server answers, who one is. */
export function Head() {
  const desk = useDesk();
  const { screen } = routeOf(desk.path.value);
  const atBlocks = ["blocks", "take-in", "writer", "send"].includes(screen);
  return (
    <header class="head">
      <a class="skip" href="#content">
        Skip to the content
      </a>
      <span class="mark">Undercroft</span>
      <nav aria-label="Desk">
        <Link to={ROOT} current={screen === "squad" || screen === "athlete"}>
          Squad
        </Link>
        <Link to={BLOCKS} current={atBlocks}>
          Blocks
        </Link>
        <Link to={CALCULATORS} current={screen === "calculators" || screen === "calculator"}>
          Calculators
        </Link>
      </nav>
      <Silence />
      <span class="who">{desk.coach.value?.name}</span>
      <Leave />
    </header>
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
    const drafts = draftsOf(desk.shelf, desk.coach.value?.id ?? "").length;
    const only = `${drafts === 1 ? "One draft is" : `${drafts} drafts are`} only in this browser`;
    if (drafts > 0 && !window.confirm(`${only}; kept for your next log-in. Log out?`)) return;
    if (mayLeave(desk)) act.run(logOut, () => sayGoodbye(desk));
  };
  return (
    <button type="button" class="plain" onClick={leave} disabled={act.busy}>
      {act.fault ? "Not logged out; try again" : "Log out"}
    </button>
  );
}
