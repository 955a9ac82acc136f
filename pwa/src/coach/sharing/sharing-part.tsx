import type { AthletePage } from "../answers";
import { leaveAthlete, sharing } from "../desk";
import { go, useDesk } from "../shell/desk-state";
import { ROOT } from "../shell/route";
import { useMay } from "../shell/right";
import { Failure, Loaded } from "../shell/states";
import { useAct } from "../shell/use-act";
import { useLoad } from "../shell/use-load";
import { LeavingPart } from "./leaving-part";
import { HandOverForm, InviteForm } from "./offer-form";
import { OfferList } from "./offer-list";
import { Sharers } from "./sharers";

/** Who else has to do with this athlete, and how the athlete leaves. */
export function SharingPart({ page }: { readonly page: AthletePage }) {
  const load = useLoad(`sharing ${page.id}`, () => sharing(page.id));
  const own = useMay("own");
  return (
    <>
      <Loaded load={load} what="who shares this athlete">
        {({ coaches, offers }) => (
          <section>
            <h2>Other coaches</h2>
            <Sharers athlete={page} coaches={coaches} again={load.again} />
            {own && <OfferList offers={offers} again={load.again} />}
          </section>
        )}
      </Loaded>
      {own ? (
        <>
          <Invite page={page} again={load.again} />
          <HandOver page={page} again={load.again} />
          <LeavingPart page={page} />
        </>
      ) : (
        <GiveUp page={page} />
      )}
    </>
  );
}

interface LinkProps {
  readonly page: AthletePage;
  readonly again: () => void;
}

function Invite({ page, again }: LinkProps) {
  return (
    <section>
      <h2>Invite a coach</h2>
      <p class="aside-note">
        Who reads sees all there is of {page.name}: results, pain, screening. Who writes also sends
        own blocks and changes person and kit. Phones, signatures and clearances stay yours. Your
        blocks stay yours, too. It takes an account on this server; whoever runs it makes one.
      </p>
      <InviteForm athletes={[page.id]} onMade={again} />
    </section>
  );
}

function HandOver({ page, again }: LinkProps) {
  return (
    <section>
      <h2>Hand over</h2>
      <p class="aside-note">
        Once the other coach accepts, {page.name} is theirs: the ledger, every revision and the
        phones go along as they are, and the running block as a copy. Rights of other coaches and
        open invitations end.
      </p>
      <HandOverForm athletes={[page.id]} onMade={again} />
    </section>
  );
}

function GiveUp({ page }: { readonly page: AthletePage }) {
  const desk = useDesk();
  const act = useAct();
  const leave = () => {
    const words = `You will see nothing of ${page.name} any more, until ${page.owner} invites you again. Give your right up?`;
    if (window.confirm(words))
      act.run(
        () => leaveAthlete(page.id),
        () => go(desk, ROOT),
      );
  };
  return (
    <section>
      <h2>Your right</h2>
      <p>
        {page.name} is {page.owner}’s athlete, who invites coaches and takes rights back.
      </p>
      <Failure fault={act.fault} />
      <button type="button" disabled={act.busy} onClick={leave}>
        Give my right up
      </button>
    </section>
  );
}
