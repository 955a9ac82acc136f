import { useState } from "preact/hooks";

import type { AthletePage, Proposals } from "../answers";
import { proposals } from "../desk";
import { OwnPart } from "../own/own-part";
import { counted } from "../shell/counted";
import { Link } from "../shell/link";
import { BLOCKS } from "../shell/route";
import { Loaded, Said } from "../shell/states";
import { useLoad } from "../shell/use-load";
import { Decide } from "./decide";

interface ProposalsPartProps {
  readonly page: AthletePage;
  readonly onSent: () => void;
}

/** What the loads of the week ahead should become, and why; the coach decides. */
export function ProposalsPart({ page, onSent }: ProposalsPartProps) {
  const load = useLoad(`proposals ${page.id}`, () => proposals(page.id));
  const [said, setSaid] = useState("");
  const sent = (revision: number, loads: number) => {
    setSaid(`Sent as revision ${revision}: ${counted(loads, "set")} with another load.`);
    load.again();
    onSent();
  };
  return (
    <section>
      <h2>Next loads</h2>
      {said && <Said>{said}</Said>}
      <Loaded load={load} what="next loads">
        {(found) => <Found key={found.revision} found={found} page={page} sent={sent} />}
      </Loaded>
      {page.block?.mine && <OwnPart key={page.revision} block={page.block} athlete={page} />}
    </section>
  );
}

interface FoundProps {
  readonly found: Proposals;
  readonly page: AthletePage;
  readonly sent: (revision: number, loads: number) => void;
}

function Found({ found, page, sent }: FoundProps) {
  if (found.revision === null) {
    return (
      <p class="lead">
        Nothing was sent yet. <Link to={BLOCKS}>Blocks</Link> are sent from their own page.
      </p>
    );
  }
  if (found.sessions.length === 0) {
    return <p class="lead">No session of {found.block} lies ahead.</p>;
  }
  return (
    <>
      <p class="aside-note">
        The week ahead in {found.block}, revision {found.revision}. A load in kilograms keeps the
        share of the maximum that it was sent with. What you accept is sent to {page.name} alone and
        stays {page.name}’s own when the block is sent again; the block stays as you wrote it.
      </p>
      {found.waiting === 0 && (
        <p class="lead">Nothing to decide: what has come in asks for no other load.</p>
      )}
      <Decide found={found} revision={found.revision} athlete={page} sent={sent} />
    </>
  );
}
