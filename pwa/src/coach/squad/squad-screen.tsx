import { useState } from "preact/hooks";

import type { SquadLine } from "../answers";
import { addAthlete, squad } from "../desk";
import { TextField } from "../fields/text-field";
import { go, useDesk } from "../shell/desk-state";
import { Link } from "../shell/link";
import { Page } from "../shell/page";
import { athletePath, BLOCKS } from "../shell/route";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLoad } from "../shell/use-load";
import { SquadTable } from "./squad-table";

/** One line per athlete, those who need attention first; the server has put them in order. */
export function SquadScreen() {
  const load = useLoad("squad", squad);
  return (
    <Page title="Squad" wide>
      <Loaded load={load} what="the squad">
        {(athletes) => (athletes.length === 0 ? <NobodyYet /> : <Squad athletes={athletes} />)}
      </Loaded>
    </Page>
  );
}

function Squad({ athletes }: { readonly athletes: readonly SquadLine[] }) {
  return (
    <>
      <SquadTable athletes={athletes} />
      <p class="aside-note">
        Silence is not absence: without signal, an athlete who is not heard from may have trained.
      </p>
      <section class="apart">
        <h2>Add an athlete</h2>
        <AddAthlete />
      </section>
    </>
  );
}

function NobodyYet() {
  return (
    <>
      <p class="lead">
        Nobody is in your squad yet. Three things bring a first session to a phone:
      </p>
      <ol class="first-steps">
        <li>
          <h2>Add an athlete</h2>
          <p>Then write down the kit that stands there, and a maximum or two if you know them.</p>
          <AddAthlete />
        </li>
        <li>
          <h2>Write a block</h2>
          <p>
            By hand, or from a file: <Link to={BLOCKS}>Blocks</Link>. Loads appear beside the text.
          </p>
        </li>
        <li>
          <h2>Invite and send</h2>
          <p>
            An invitation pairs the athlete’s phone. What you send then waits there, signal or not.
          </p>
        </li>
      </ol>
    </>
  );
}

function AddAthlete() {
  const desk = useDesk();
  const act = useAct();
  const [name, setName] = useState("");
  const submit = (event: Event) => {
    event.preventDefault();
    act.run(
      () => addAthlete(name.trim()),
      (added) => go(desk, athletePath(added.id, "person")),
    );
  };
  return (
    <form class="one-line" onSubmit={submit}>
      <TextField label="Name" value={name} onValue={setName} longest={80} width="w20" required />
      <button type="submit" disabled={act.busy || name.trim() === ""}>
        Add
      </button>
      <Failure fault={act.fault} />
    </form>
  );
}
