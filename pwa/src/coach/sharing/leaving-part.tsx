import { useState } from "preact/hooks";

import { Refused } from "../../api/client";
import type { AthletePage } from "../answers";
import { archiveAddress, eraseAthlete } from "../desk";
import { TextField } from "../fields/text-field";
import { within } from "../block/faults";
import { counted } from "../shell/counted";
import { go, useDesk } from "../shell/desk-state";
import { ROOT } from "../shell/route";
import { Failure } from "../shell/states";
import { useAct } from "../shell/use-act";

/** Everything as files, and after that, if it must be, nothing. */
export function LeavingPart({ page }: { readonly page: AthletePage }) {
  return (
    <>
      <section>
        <h2>Archive</h2>
        <p class="aside-note">
          Everything about {page.name}, your notes included, in one zip: JSON for programs, CSV for
          spreadsheets. {page.name} can save the same on a paired phone. It holds no password or
          link.
        </p>
        <a class="button" href={archiveAddress(page.id)} download>
          Save the archive
        </a>
      </section>
      <Erase page={page} />
    </>
  );
}

function Erase({ page }: { readonly page: AthletePage }) {
  const desk = useDesk();
  const act = useAct();
  const [name, setName] = useState("");
  const erase = (event: Event) => {
    event.preventDefault();
    act.run(
      () => eraseAthlete(page.id, name),
      () => go(desk, ROOT),
    );
  };
  const faults = act.fault instanceof Refused ? act.fault.faults : [];
  return (
    <section class="erase">
      <h2>Erase {page.name}</h2>
      <WhatGoes page={page} />
      <form class="one-line" onSubmit={erase}>
        <TextField
          label={`Type “${page.name}” to erase`}
          value={name}
          onValue={setName}
          longest={80}
          width="w20"
          faults={within(faults, "name")}
        />
        <button type="submit" disabled={act.busy || name.trim() !== page.name.trim()}>
          {act.busy ? "Erasing …" : "Erase for good"}
        </button>
      </form>
      {faults.length === 0 && <Failure fault={act.fault} />}
    </section>
  );
}

function WhatGoes({ page }: { readonly page: AthletePage }) {
  const paired = page.devices.filter((device) => device.revoked_at === null).length;
  return (
    <>
      <p>Nothing brings it back. Save the archive first.</p>
      <ul class="what-goes">
        <li>
          <b>Goes:</b> person, kit, maxima, every revision and load sheet, the whole ledger with
          pain and messages, screening with its records, what other coaches may see.
        </li>
        <li>
          <b>Stays:</b> your blocks and exercises; backups of the server that were made before.
        </li>
        <li>
          <b>On the phone:</b>{" "}
          {paired === 0
            ? "none is paired."
            : `${counted(paired, "paired phone")}. What is held there stays until ${page.name} unpairs, and the phone says so; what is unsent comes no more.`}
        </li>
      </ul>
    </>
  );
}
