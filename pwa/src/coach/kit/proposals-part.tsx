import type { Kit } from "../../api/types";
import type { KitProposal } from "../answers";
import { acceptProposal, declineProposal, kitProposals } from "../desk";
import { useDesk } from "../shell/desk-state";
import { May } from "../shell/right";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLoad } from "../shell/use-load";
import { dayAndClock } from "../shell/when";

interface ProposalsPartProps {
  readonly athlete: string;
  readonly onAccepted: (kit: Kit) => void;
}

/** What the athlete found different in the gym. Nothing changes before the coach says so. */
export function ProposalsPart({ athlete, onAccepted }: ProposalsPartProps) {
  const load = useLoad(`kit proposals ${athlete}`, () => kitProposals(athlete));
  return (
    <Loaded load={load} what="proposed changes">
      {(proposals) =>
        proposals.length > 0 && (
          <section>
            <h2>Proposed from the phone</h2>
            <ul class="held">
              {proposals.map((proposal) => (
                <Proposal
                  key={proposal.id}
                  athlete={athlete}
                  proposal={proposal}
                  again={load.again}
                  onAccepted={onAccepted}
                />
              ))}
            </ul>
          </section>
        )
      }
    </Loaded>
  );
}

interface ProposalProps extends ProposalsPartProps {
  readonly proposal: KitProposal;
  readonly again: () => void;
}

function Proposal({ athlete, proposal, again, onAccepted }: ProposalProps) {
  const act = useAct();
  const desk = useDesk();
  const { id, at, item, says, change, trouble } = proposal;
  const unsaved = desk.unsaved.value !== null;
  const accept = () =>
    act.run(
      () => acceptProposal(athlete, id),
      ({ document }) => {
        onAccepted(document);
        again();
      },
    );
  return (
    <li>
      <h3>
        {item}, {dayAndClock(at, desk.now())}
      </h3>
      {says ? <p>{says}</p> : <pre>{JSON.stringify(change, null, 2)}</pre>}
      {trouble && <p class="soft">Cannot be applied: {trouble}.</p>}
      {unsaved && !trouble && <p class="soft">Save the kit below first.</p>}
      <Failure fault={act.fault} />
      <May needs="write">
        <button type="button" disabled={act.busy || unsaved || trouble !== null} onClick={accept}>
          Change the kit<span class="sr-only">: {item}</span>
        </button>{" "}
        <button
          type="button"
          class="plain"
          disabled={act.busy}
          onClick={() => act.run(() => declineProposal(athlete, id), again)}
        >
          Set aside<span class="sr-only">: {item}</span>
        </button>
      </May>
    </li>
  );
}
